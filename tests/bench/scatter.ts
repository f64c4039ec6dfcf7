import { monteCarlo } from '../../src/flight/questions/sensitivity.ts';
import { asked } from './asked.ts';
import { evaluationsOf } from './evaluations.ts';
import { kilobytes } from './many-plans.ts';
import { bytesAllocated, inTurns } from './measure.ts';
import { type Line, outcome } from './table.ts';

const landings = 10_000;
/** ms. */
const target = 2000;

/** Many flights of one plan, each with something a little different. */
export function scatter(): Line[] {
  const [time] = inTurns([() => monteCarlo(asked, landings, 1903)], 3, 1) as [number];
  const evaluations = evaluationsOf(() => monteCarlo(asked, 200, 1903)) / 200;
  // Few enough that nothing is collected in between.
  const bytes = bytesAllocated(() => monteCarlo(asked, 200, 1903), 7) / 200;
  return [
    [`${landings} landings`, `${time.toFixed(0)} ms`, outcome(`under ${target} ms`, time < target)],
    ['  heap a landing', kilobytes(bytes), 'allocated'],
    [
      '  evaluations a landing',
      evaluations.toFixed(0),
      `${((time / landings / evaluations) * 1e6).toFixed(0)} ns each`,
    ],
  ];
}
