import { resolveRequest } from '../../plan/request.ts';
import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';

export const mass: FaultMethod<'mass'> = {
  madeOn: 'downwind',
  make: (parts, { amount }, { request, resolved }) => ({
    ...parts,
    resolved: resolveRequest({ ...request, mass: changed(resolved.flown.mass, amount) }),
  }),
};
