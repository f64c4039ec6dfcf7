import { Integrator, type Motion } from '../../src/flight/numerics/integrator.ts';

/** How often a piece of work asks the core's motions for their rates of change. */
export function evaluationsOf(work: () => unknown): number {
  const { run } = Integrator.prototype;
  let count = 0;
  Integrator.prototype.run = function counted(this: Integrator, motion: Motion, ...rest) {
    const derivative: Motion['derivative'] = (state, rates) => {
      count++;
      motion.derivative(state, rates);
    };
    return run.call(this, { ...motion, derivative }, ...rest);
  };
  try {
    work();
  } finally {
    Integrator.prototype.run = run;
  }
  return count;
}
