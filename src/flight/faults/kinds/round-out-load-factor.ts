import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import { CannotFly, plannedLevel } from '../parts.ts';

export const roundOutLoadFactor: FaultMethod<'round-out-load-factor'> = {
  madeOn: 'landing',
  make: (parts, { amount }, plan) => {
    const pull = changed(plan.asked.pull, amount);
    if (pull < leastPull) throw new CannotFly('pull-too-weak');
    return { ...parts, landing: { pull, comesDown: plannedLevel(plan).height } };
  },
};

/** Load factor: a weaker pull does not come level. */
const leastPull = 1.02;
