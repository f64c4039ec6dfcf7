import { type Dense, type Rates, Solver } from './odex-solver.ts';

/** How odex is set. */
export interface OdexSetting {
  /** m; rad and m/s by their lever arm. */
  readonly tolerance: number;
  /** The relative tolerance as a share of the absolute one, per metre; it decides the order that odex begins with. */
  readonly relative: number;
  /** s: the step tried first. */
  readonly firstStep: number;
  /** Columns of the extrapolation table: the highest order. */
  readonly columns: number;
  /** Whether a step is also judged by its dense output. */
  readonly judgeDense: boolean;
}

/** What the lengths of a leg are worth in its own units, for the tolerance of each component. */
export type Scale = readonly number[];

/** odex, with one solver for each state size, set up once and used for every leg of every flight. */
export class OdexLegs {
  /** Evaluations of the right-hand side, since the start. */
  evaluations = 0;
  private readonly setting: OdexSetting;
  private readonly solvers = new Map<Scale, Solver>();

  constructor(setting: OdexSetting) {
    this.setting = setting;
  }

  /** The state after a known time. */
  forTime(rates: Rates, y: readonly number[], duration: number, scale: Scale): number[] {
    const solver = this.solverFor(scale);
    solver.denseOutput = false;
    const end = solver.solve(rates, 0, y, duration);
    this.evaluations += end.nEval;
    return end.y;
  }

  /**
   * The state where `left` falls to 0; undefined where it does not within `longest` s. The step that goes past it is
   * examined through the dense output, and the place is found in it by false position (Illinois), as ours is.
   */
  until(
    rates: Rates,
    y: readonly number[],
    left: (y: readonly number[]) => number,
    longest: number,
    scale: Scale,
  ): number[] | undefined {
    const solver = this.solverFor(scale);
    solver.denseOutput = true;
    let before = left(y);
    let found: number[] | undefined;
    const { nEval } = solver.solve(rates, 0, y, longest, (count, from, to, now, dense) => {
      if (count === 1 || !dense) return undefined;
      const after = left(now);
      if (after > 0) {
        before = after;
        return undefined;
      }
      found = crossing(dense, left, [from, to], [before, after], now);
      return false;
    });
    this.evaluations += nEval;
    return found;
  }

  private solverFor(scale: Scale): Solver {
    let solver = this.solvers.get(scale);
    if (!solver) {
      solver = new Solver(scale.length);
      solver.initialStepSize = this.setting.firstStep;
      solver.absoluteTolerance = scale.map((unit) => unit * this.setting.tolerance);
      solver.relativeTolerance = this.setting.relative * this.setting.tolerance;
      solver.maxExtrapolationColumns = this.setting.columns;
      solver.denseOutputErrorEstimator = this.setting.judgeDense;
      this.solvers.set(scale, solver);
    }
    return solver;
  }
}

function crossing(
  dense: Dense,
  left: (y: readonly number[]) => number,
  [from, to]: readonly [number, number],
  [before, after]: readonly [number, number],
  now: readonly number[],
): number[] {
  let [low, high, atLow, atHigh] = [from, to, before, after];
  const y = [...now];
  for (let tries = 0; tries < 60 && Math.abs(atHigh) > 1e-9 && Math.abs(high - low) > 1e-12; tries++) {
    const time = (low * atHigh - high * atLow) / (atHigh - atLow);
    for (let i = 0; i < y.length; i++) y[i] = dense(i, time);
    const value = left(y);
    if (value * atHigh < 0) [low, atLow] = [high, atHigh];
    else atLow /= 2;
    [high, atHigh] = [time, value];
  }
  return y;
}
