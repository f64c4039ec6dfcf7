import type { FaultMethod } from '../fault-method.ts';
import { headingLeg, headingTurn } from '../handling.ts';
import { CannotFly, isBaseLine, type Parts } from '../parts.ts';

export const baseDrift: FaultMethod<'base-drift'> = {
  madeOn: 'base',
  make: (parts) => ({ ...parts, handled: noseSquareOnBase(parts) }),
};

function noseSquareOnBase({ legs }: Parts): Parts['handled'] {
  if (!legs.some(isBaseLine)) throw new CannotFly('no-base-leg');
  return (leg) => {
    if (isBaseLine(leg)) return [headingLeg(leg)];
    return leg.kind === 'turn' && leg.phase === 'base-turn' ? headingTurn(leg) : [leg];
  };
}
