import { workOut } from '../../src/flight/plan/planner.ts';
import type { PlanRequest } from '../../src/flight/terms/plan.ts';
import { asked, severalWinds } from './asked.ts';
import { evaluationsOf } from './evaluations.ts';
import { inTurns } from './measure.ts';
import { type HalfCircuit, solveByOdex } from './odex-approach.ts';
import { OdexLegs } from './odex-leg.ts';
import { type Line, outcome } from './table.ts';
import { touchdownError, tuneOdex } from './tune-odex.ts';

/** m: the accuracy at the touchdown at which the two are compared. */
const equalAccuracy = 0.01;
const timesFaster = 4;

/** One solved half circuit: ours, and the same shooting with odex tuned to the same accuracy. */
export function againstOdex(): Line[] {
  const tuned = tuneOdex(severalWinds, equalAccuracy);
  const odex = new OdexLegs(tuned.setting);
  const [ours, theirs] = inTurns([() => workOut(asked), () => solveByOdex(asked, odex)], 600, 600) as [
    number,
    number,
  ];
  const largest = Math.max(...severalWinds.map((request) => touchdownError(request, oursFor(request))));
  const { tolerance, firstStep, columns } = tuned.setting;
  odex.evaluations = 0;
  const by = solveByOdex(asked, odex);
  const cm = (metres: number) => `${(metres * 100).toFixed(2)} cm`;
  return [
    [
      '180 solved, ours',
      `${ours.toFixed(3)} ms`,
      `${evaluationsOf(() => workOut(asked))} evaluations of the rates`,
    ],
    [
      '  its touchdown error',
      cm(touchdownError(asked, oursFor(asked))),
      `at most ${cm(largest)} in ${severalWinds.length} winds`,
    ],
    [
      '180 solved, odex',
      `${theirs.toFixed(3)} ms`,
      `${odex.evaluations} evaluations (tolerance ${tolerance}, first step ${firstStep} s, ${columns} columns)`,
    ],
    ['  its touchdown error', cm(touchdownError(asked, by)), `at most ${cm(tuned.error)} in the same winds`],
    [
      'odex over ours',
      `${(theirs / ours).toFixed(2)} x`,
      outcome(`${timesFaster} x`, theirs / ours >= timesFaster),
    ],
  ];
}

function oursFor(request: PlanRequest): HalfCircuit {
  const { solved, closed } = workOut(request).solution!;
  return { pastAbeam: solved.value, lead: closed.joinValues[0]! };
}
