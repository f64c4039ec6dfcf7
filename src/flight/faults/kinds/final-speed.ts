import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import { atSpeed } from '../parts.ts';

export const finalSpeed: FaultMethod<'final-speed'> = {
  madeOn: 'final',
  make: (parts, { amount }, { resolved }) => {
    const { approach } = resolved.conditions.speeds;
    return { ...parts, final: atSpeed(parts.final, () => changed(approach, amount)) };
  },
};
