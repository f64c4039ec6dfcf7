import { approaches } from '../../flight/approaches/approaches.ts';
import type { Plan } from '../../flight/terms/plan.ts';

/**
 * The part of the flight that the profile shows: all of it, except that of an approach that ends in another (a
 * spiral) it shows only the other, from the downwind key on. Its circles are so high and take so long that the
 * approach itself would shrink to nothing beside them.
 */
export function shownPart(plan: Plan): Plan {
  const start = plan.keys.find((key) => key.id === 'downwind-key')?.time;
  if (approaches[plan.approach].endsIn === undefined || start === undefined) return plan;
  return {
    ...plan,
    track: plan.track.filter((sample) => sample.time >= start && sample.phase !== 'circle'),
    keys: plan.keys.filter((key) => key.time >= start),
  };
}
