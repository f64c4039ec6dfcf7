import { cautionsOf, type Examined } from '../flight/plan/cautions.ts';
import { planApproach } from '../flight/plan/planner.ts';
import type { CautionCode } from '../flight/terms/caution.ts';
import type { PlanRequest } from '../flight/terms/plan.ts';
import {
  radiansPerDegree as degree,
  metresPerSecondPerKnot as knot,
  metresPerFoot,
} from '../units/factors.ts';
import { invert } from './invert.ts';
import { numbersOf, rowOf } from './published.ts';
import { type CheckResult, compared } from './run-checks.ts';

const heading = 'Limits behind the cautions';

/** Rows that `limitChecks` uses. */
export const limitRows = ['bk_medium', 'bk_steep', 'fg_screen', 'lm_final', 'lm_slow', 'lm_tail'] as const;

/** Where the core begins to give a caution, found by changing a flight until it does, beside the published limits. */
export function limitChecks(flyer: PlanRequest): CheckResult[] {
  const plan = planApproach({ ...flyer, detail: 'flight' });
  // A school may ask for more; the published limit is compared with what the core asks for by itself.
  const flight: Examined = { ...plan, pull: plan.roundOut.loadFactor, minimums: undefined };
  const bank = bankOfCaution(flight);
  const medium = rowOf('bk_medium');
  const highest = Math.max(...numbersOf(medium));
  return [
    {
      ...compared(heading, { ...medium, value: highest }, [bank]),
      row: medium,
      at: `upper end of ${numbersOf(medium).join(' to ')}°`,
    },
    compared(heading, rowOf('bk_steep'), [bank]),
    compared(heading, rowOf('fg_screen'), [screenOf(flight)]),
    compared(heading, rowOf('lm_final'), [finalOfCaution(flight)]),
    compared(heading, rowOf('lm_slow'), [marginOfCaution(flight)]),
    compared(heading, rowOf('lm_tail'), [tailwindOfCaution(flight)]),
  ];
}

const earns = (code: CautionCode, flight: Examined) =>
  cautionsOf(flight).find((caution) => caution.code === code);

/** Degrees, to a millionth: the least bank that brings a caution. */
function bankOfCaution(flight: Examined): number {
  // The aircraft's own limit is not the one looked for.
  const { turns } = flight.aircraft;
  const aircraft = { ...flight.aircraft, turns: { ...turns, limit: 90 * degree } };
  const cautioned = (degrees: number) => {
    const track = flight.track.map((sample) => ({ ...sample, bank: degrees * degree }));
    return earns('bank-over-medium', { ...flight, aircraft, track }) ? 1 : 0;
  };
  return millionths(invert(cautioned, 0.5, 1, 89));
}

/** ft, to a millionth: a turn to final completed below this height brings a caution. */
function finalOfCaution(flight: Examined): number {
  const uncautioned = (feet: number) => {
    const keys = flight.keys.map((key) =>
      key.id === 'final' ? { ...key, height: feet * metresPerFoot } : key,
    );
    return earns('final-turn-low', { ...flight, keys }) ? 0 : 1;
  };
  return millionths(invert(uncautioned, 0.5, 1, 3000));
}

/** Multiple of the stall speed, to a millionth: straight flight below this speed brings a caution. */
function marginOfCaution(flight: Examined): number {
  const uncautioned = (times: number) => {
    const track = flight.track.map((sample) => ({
      ...sample,
      bank: 0,
      eas: times * flight.flown.stallSpeed,
    }));
    return earns('slow', { ...flight, track }) ? 0 : 1;
  };
  return millionths(invert(uncautioned, 0.5, 0.5, 5));
}

/** kt, to a millionth: more tailwind than this brings a caution, for an aircraft that gives no limit itself. */
function tailwindOfCaution(flight: Examined): number {
  const { aircraft, runway } = flight;
  const limits = { ...aircraft.limits, tailwind: undefined };
  const cautioned = (knots: number) => {
    const surfaceWind = { from: runway.heading + Math.PI, speed: knots * knot };
    const flown = { ...flight.flown, surfaceWind, gust: undefined };
    return earns('tailwind', { ...flight, flown, aircraft: { ...aircraft, limits } }) ? 1 : 0;
  };
  return millionths(invert(cautioned, 0.5, 0, 40));
}

const millionths = (value: number) => Math.round(value * 1e6) / 1e6;

/** ft: how close below the flight an obstacle brings a caution. */
function screenOf(flight: Examined): number {
  const { along, across, height } = flight.track.findLast(({ phase }) => phase === 'final')!;
  const obstacle = { what: 'mast', height, along, across, width: 10 };
  const caution = earns('obstacle-clearance', {
    ...flight,
    runway: { ...flight.runway, obstacles: [obstacle] },
  });
  return caution ? caution.limit / metresPerFoot : Number.NaN;
}
