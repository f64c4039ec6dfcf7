import type { FaultMethod } from '../fault-method.ts';

export const touchdownDrift: FaultMethod<'touchdown-drift'> = {
  madeOn: 'landing',
  make: (parts) => ({ ...parts, landing: { noseStraight: true } }),
};
