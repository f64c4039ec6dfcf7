import type { FaultMethod } from '../fault-method.ts';
import { wanderingLegs } from '../handling.ts';

export const glideSpeedWandering: FaultMethod<'glide-speed-wandering'> = {
  madeOn: 'downwind',
  make: (parts, change) => ({ ...parts, handled: (leg) => wanderingLegs(leg, change) }),
};
