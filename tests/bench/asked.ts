import type { WindCase } from '../../src/flight/questions/wind-table.ts';
import type { PlanRequest } from '../../src/flight/terms/plan.ts';
import { readAircraft, readAirfield } from '../../src/school/read.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../../src/units/factors.ts';

const at = (name: string) => new URL(`../../lessons/${name}`, import.meta.url).pathname;
const aircraft = (await readAircraft(at('fleet/osier-15.yaml'))).value!;
const airfield = (await readAirfield(at('airfields/fallow-reach.yaml'))).value!;

/** The half circuit at the demonstration field in this wind, degrees true and kt. */
function halfCircuitIn(from: number, knots: number): PlanRequest {
  return {
    aircraft,
    airfield,
    runway: airfield.runways[0]!,
    approach: '180',
    power: 'idle',
    wind: { from: from * radiansPerDegree, speed: knots * metresPerSecondPerKnot },
    detail: 'flight',
  };
}

export const asked = halfCircuitIn(210, 12);

/** Winds in which the two have to be equally exact: in one alone that may be luck. */
export const severalWinds = [
  asked,
  halfCircuitIn(238, 0),
  halfCircuitIn(240, 14),
  halfCircuitIn(300, 9),
  halfCircuitIn(190, 8),
];

/** Ten winds, from a light tailwind to a fresh headwind, with wind across from either side. */
const tenWinds: readonly WindCase[] = [-2, 1, 4, 7, 10].flatMap((headwind) =>
  [-5, 5].map((crosswind) => ({
    headwind: headwind * metresPerSecondPerKnot,
    crosswind: crosswind * metresPerSecondPerKnot,
  })),
);

/** This many winds: the same ten over and over, so that a longer table has no harder plans than a short one. */
export function winds(count: number): WindCase[] {
  return Array.from({ length: count }, (_, i) => tenWinds[i % tenWinds.length]!);
}
