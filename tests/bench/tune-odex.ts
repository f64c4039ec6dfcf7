import type { PlanRequest } from '../../src/flight/terms/plan.ts';
import { inTurns } from './measure.ts';
import { type HalfCircuit, solveByOdex, touchdownByOdex } from './odex-approach.ts';
import { OdexLegs, type OdexSetting } from './odex-leg.ts';

/** A flight so finely stepped that it counts as the truth. */
const finest: OdexSetting = {
  tolerance: 1e-10,
  relative: 1e-4,
  firstStep: 0.5,
  columns: 9,
  judgeDense: true,
};

/** m: how far from the spot the wheels touch when the numbers found are flown as finely as possible. */
export function touchdownError(request: PlanRequest, found: HalfCircuit): number {
  return Math.abs(touchdownByOdex(request, found, new OdexLegs(finest)));
}

export interface Tuned {
  readonly setting: OdexSetting;
  /** m: the largest error in the winds it was tuned for. */
  readonly error: number;
  readonly evaluations: number;
}

/**
 * The fastest setting of odex whose numbers are right to `allowed` m in each of these winds. Of all settings, only
 * the few with the fewest evaluations are timed.
 */
export function tuneOdex(requests: readonly PlanRequest[], allowed: number): Tuned {
  const exact = settings().flatMap((setting) => judged(setting, requests, allowed) ?? []);
  const few = exact.sort((a, b) => a.evaluations - b.evaluations).slice(0, 8);
  if (few.length === 0) throw new Error('no setting of odex is exact enough');
  const works = few.map(({ setting }) => {
    const odex = new OdexLegs(setting);
    return () => solveByOdex(requests[0]!, odex);
  });
  const times = inTurns(works, 15, 5);
  return few[times.indexOf(Math.min(...times))]!;
}

function settings(): OdexSetting[] {
  const found: OdexSetting[] = [];
  for (const tolerance of [0.1, 0.03, 0.01, 3e-3, 1e-3, 3e-4, 1e-4, 3e-5]) {
    for (const firstStep of [1, 2, 4]) {
      for (const columns of [3, 4, 5, 9]) {
        for (const relative of [1e-5, 1e-2]) {
          found.push({ tolerance, firstStep, columns, relative, judgeDense: false });
        }
      }
    }
  }
  return found;
}

function judged(setting: OdexSetting, requests: readonly PlanRequest[], allowed: number): Tuned | undefined {
  const odex = new OdexLegs(setting);
  let error = 0;
  for (const request of requests) {
    try {
      error = Math.max(error, touchdownError(request, solveByOdex(request, odex)));
    } catch {
      return undefined;
    }
    if (error > allowed) return undefined;
  }
  return { setting, error, evaluations: Math.round(odex.evaluations / requests.length) };
}
