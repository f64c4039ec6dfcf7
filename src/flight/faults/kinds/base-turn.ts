import type { FaultMethod } from '../fault-method.ts';
import { afterCount, downwindSeconds } from '../parts.ts';

export const baseTurn: FaultMethod<'base-turn'> = {
  madeOn: 'base',
  make: (parts, { seconds }, plan) => afterCount(parts, downwindSeconds(plan) + seconds),
};
