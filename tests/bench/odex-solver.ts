import { createRequire } from 'node:module';

export type Rates = (time: number, y: readonly number[]) => readonly number[];
export type Dense = (component: number, time: number) => number;
type OnStep = (
  count: number,
  from: number,
  to: number,
  y: readonly number[],
  dense?: Dense | false,
) => boolean | undefined;

/** What the bench uses of odex (Hairer and Wanner's extrapolation code, in JavaScript). */
export interface Solver {
  denseOutput: boolean;
  denseOutputErrorEstimator: boolean;
  maxExtrapolationColumns: number;
  initialStepSize: number;
  absoluteTolerance: number | number[];
  relativeTolerance: number | number[];
  solve(
    rates: Rates,
    from: number,
    y: readonly number[],
    to: number,
    onStep?: OnStep,
  ): { y: number[]; nEval: number };
}

// Required, not imported: the package ships its TypeScript source beside the build, and that is not ours to check.
export const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => Solver };
