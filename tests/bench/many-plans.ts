import { windTable } from '../../src/flight/questions/wind-table.ts';
import { asked, winds } from './asked.ts';
import { evaluationsOf } from './evaluations.ts';
import { bytesAllocated, inTurns } from './measure.ts';
import { type Line, outcome } from './table.ts';

const tableSize = 40;
/** ms, on one core. */
const tableTarget = 100;
const counts = [10, 20, 40, 80, 160];

/** The table of winds, and whether its cost grows with the number of plans and no faster. */
export function manyPlans(): Line[] {
  const table = (count: number) => () => windTable(asked, winds(count));
  const times = inTurns(counts.map(table), 9, 3);
  const forTable = times[counts.indexOf(tableSize)]!;
  const perPlan = times.map((time, i) => time / counts[i]!);
  const evaluations = evaluationsOf(table(tableSize)) / tableSize;
  return [
    [
      `wind table of ${tableSize} plans`,
      `${forTable.toFixed(1)} ms`,
      outcome(`under ${tableTarget} ms`, forTable < tableTarget),
    ],
    ...counts.map(
      (count, i): Line => [
        `  ${count} plans`,
        `${times[i]!.toFixed(1)} ms`,
        `${Math.round(perPlan[i]! * 1e6)} ns a plan`,
      ],
    ),
    [
      '  a plan of 160 over a plan of 10',
      (perPlan.at(-1)! / perPlan[0]!).toFixed(2),
      'about 1 where the cost is linear',
    ],
    ['  heap a plan', kilobytes(bytesAllocated(table(10), 7) / 10), 'allocated, tracks and keys included'],
    [
      '  evaluations a plan',
      evaluations.toFixed(0),
      `${((forTable / tableSize / evaluations) * 1e6).toFixed(0)} ns each`,
    ],
  ];
}

export const kilobytes = (bytes: number) => `${(bytes / 1024).toFixed(1)} KB`;
