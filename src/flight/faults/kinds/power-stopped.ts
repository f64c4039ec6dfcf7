import { resolveRequest } from '../../plan/request.ts';
import type { FaultMethod } from '../fault-method.ts';
import { CannotFly } from '../parts.ts';

export const powerStopped: FaultMethod<'power-stopped'> = {
  madeOn: 'downwind',
  make: (parts, _, { request }) => {
    if (request.power === 'stopped') throw new CannotFly('already-stopped');
    return { ...parts, resolved: resolveRequest({ ...request, power: 'stopped' }) };
  },
};
