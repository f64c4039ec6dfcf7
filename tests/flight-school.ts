import type { PlanRequest } from '../src/flight/terms/plan.ts';
import { readAircraft, readAirfield } from '../src/school/read.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../src/units/factors.ts';

// For tests: the demonstration school's aircraft and airfield, ready to be planned for.

const at = (name: string) => new URL(`../lessons/${name}`, import.meta.url).pathname;

const fleet = {
  osier: (await readAircraft(at('fleet/osier-15.yaml'))).value!,
  withy: (await readAircraft(at('fleet/withy-80.yaml'))).value!,
};
const airfield = (await readAirfield(at('airfields/fallow-reach.yaml'))).value!;

export type AircraftId = keyof typeof fleet;
export const aircraftIds = ['osier', 'withy'] as const;

export const runwayHeading = airfield.runways[0]!.heading;

/** A wind from this many degrees to the right of the runway's heading, in kt. */
export function windOffRunway(degrees: number, knots: number): { from: number; speed: number } {
  const turn = 2 * Math.PI;
  const from = (((runwayHeading + degrees * radiansPerDegree) % turn) + turn) % turn;
  return { from, speed: knots * metresPerSecondPerKnot };
}

/** A half-circuit approach at the demonstration airfield, calm unless asked otherwise. */
export function requestFor(id: AircraftId, changes: Partial<PlanRequest> = {}): PlanRequest {
  return {
    aircraft: fleet[id],
    airfield,
    runway: airfield.runways[0]!,
    approach: '180',
    power: 'idle',
    wind: { from: 0, speed: 0 },
    ...changes,
  };
}
