import type { FaultMethod } from '../fault-method.ts';
import { fromFinal } from '../parts.ts';

export const finalHeight: FaultMethod<'final-height'> = {
  madeOn: 'final',
  make: (parts, { by }, plan) => fromFinal(parts, by, plan),
};
