import { cautionsOf, type Examined } from '../../flight/cautions.ts';
import type { CautionCode, PlanRequest } from '../../flight/plan.ts';
import { planApproach } from '../../flight/planner.ts';
import { radiansPerDegree as degree, metresPerFoot } from '../../units/factors.ts';
import { invert } from './invert.ts';
import { numbersOf, rowOf } from './published.ts';
import { type CheckResult, compared } from './run-checks.ts';

const heading = 'Limits behind the cautions';

/** Rows that `limitChecks` uses. */
export const limitRows = ['bk_medium', 'bk_steep', 'fg_screen'] as const;

/** Where the core begins to caution, found by changing a flight until it does, beside the published limits. */
export function limitChecks(flyer: PlanRequest): CheckResult[] {
  const plan = planApproach({ ...flyer, detail: 'flight' });
  // A school may ask for more; the published limit is what the core asks for by itself.
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
  ];
}

const earns = (code: CautionCode, flight: Examined) =>
  cautionsOf(flight).find((caution) => caution.code === code);

/** Degrees, to a millionth: the least bank that is cautioned. */
function bankOfCaution(flight: Examined): number {
  const cautioned = (degrees: number) => {
    const track = flight.track.map((sample) => ({ ...sample, bank: degrees * degree }));
    return earns('bank-over-medium', { ...flight, track }) ? 1 : 0;
  };
  return Math.round(invert(cautioned, 0.5, 1, 89) * 1e6) / 1e6;
}

/** ft: how near below the flight an obstacle is cautioned. */
function screenOf(flight: Examined): number {
  const { along, across, height } = flight.track.findLast(({ phase }) => phase === 'final')!;
  const obstacle = { what: 'mast', height, along, across, width: 10 };
  const caution = earns('obstacle-clearance', {
    ...flight,
    runway: { ...flight.runway, obstacles: [obstacle] },
  });
  return caution ? caution.limit / metresPerFoot : Number.NaN;
}
