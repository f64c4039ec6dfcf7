import type { FaultMethod } from '../fault-method.ts';
import type { FaultPlan } from '../fault-plan.ts';
import { levelLeg } from '../handling.ts';
import { afterCount, CannotFly, downwindSeconds, isDownwindLine, type Parts } from '../parts.ts';

export const throttle: FaultMethod<'throttle'> = {
  madeOn: 'downwind',
  make: (parts, { seconds }, plan) => throttleLate(parts, seconds, plan),
};

function throttleLate(parts: Parts, seconds: number, plan: FaultPlan): Parts {
  if (seconds < 0) throw new CannotFly('throttle-early');
  const counted = parts.legs.some(isDownwindLine) ? afterCount(parts, downwindSeconds(plan)) : parts;
  const first = counted.legs[0]!;
  if (first.kind === 'landing') throw new CannotFly('nothing-before-landing');
  const track = first.kind === 'circle' ? first.from : (parts.start.heading ?? first.track);
  return { ...counted, legs: [levelLeg(track, seconds, first.phase), ...counted.legs] };
}
