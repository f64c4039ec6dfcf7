import { type Rates, type State, size } from './rates.ts';

const [k1, k2, k3, k4, trial] = [0, 1, 2, 3, 4].map(() => new Float64Array(size)) as [
  State,
  State,
  State,
  State,
  State,
];

/** One step of the fourth-order Runge-Kutta method from `state`, into `out` (which may be the same). */
export function advance(rates: Rates, state: State, dt: number, out: State): void {
  rates(state, k1);
  for (let i = 0; i < size; i++) trial[i] = state[i]! + (dt / 2) * k1[i]!;
  rates(trial, k2);
  for (let i = 0; i < size; i++) trial[i] = state[i]! + (dt / 2) * k2[i]!;
  rates(trial, k3);
  for (let i = 0; i < size; i++) trial[i] = state[i]! + dt * k3[i]!;
  rates(trial, k4);
  for (let i = 0; i < size; i++) {
    out[i] = state[i]! + (dt / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
  }
}
