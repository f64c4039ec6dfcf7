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

/** The parts of odex that the bench uses (Hairer and Wanner's extrapolation code, in JavaScript). */
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

// Required, not imported: the package ships its TypeScript source beside the build, and we do not want to check that.
export const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => Solver };
