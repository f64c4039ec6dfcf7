import { changed } from '../../terms/fault.ts';
import { heightForPlace } from '../dive-for-aim-point.ts';
import type { FaultMethod } from '../fault-method.ts';
import type { FaultPlan } from '../fault-plan.ts';
import { atSpeed, CannotFly, fromFinal, type Parts } from '../parts.ts';

export const roundOutSpeed: FaultMethod<'round-out-speed'> = {
  madeOn: 'landing',
  make: (parts, { amount }, plan) => {
    const { approach } = plan.resolved.conditions.speeds;
    return divedForTheAimPoint(parts, changed(approach, amount), plan);
  },
};

/** Final at another speed, from the height that brings it to the planned place of the round-out. */
function divedForTheAimPoint(parts: Parts, eas: number, plan: FaultPlan): Parts {
  const { track } = plan.pattern.flight;
  const final = atSpeed(parts.final, () => eas);
  const [from, to] = [
    track.findLast(({ phase }) => phase === 'final-turn'),
    track.findLast(({ phase }) => phase === 'final'),
  ];
  const by = from && to && heightForPlace(final, from, to, plan.resolved.conditions);
  if (by === undefined) throw new CannotFly('no-height-for-speed');
  return fromFinal({ ...parts, final }, by, plan);
}
