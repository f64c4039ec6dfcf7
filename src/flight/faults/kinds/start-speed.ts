import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import { CannotFly, type Parts } from '../parts.ts';

export const startSpeed: FaultMethod<'start-speed'> = {
  madeOn: 'downwind',
  make: (parts, { amount }) => startedAt(parts, changed(parts.start.eas, amount)),
};

function startedAt(parts: Parts, eas: number): Parts {
  if (parts.legs[0]?.kind !== 'line') {
    throw new CannotFly('begins-in-circle');
  }
  return { ...parts, start: { ...parts.start, eas } };
}
