import { approaches } from '../../flight/approaches/approaches.ts';
import { leastSoundStart } from '../../flight/questions/least-sound-start.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { heightStep } from '../figures/format.ts';
import { capital } from '../figures/letter-case.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { startWords } from '../winds/start-words.ts';
import { cautionsOf, remediesOf } from './grade-sentences.ts';

/** A spiral begins at its top; where the half circuit that ends it is too low, it is that half that begins higher. */
function higherPattern({ approach }: Plan, at: KeyId): string {
  return approaches[approach].endsIn !== undefined && at === 'downwind-key'
    ? ', in a pattern that is so high'
    : '';
}

/** Finding the height takes many flights, and a plan is asked for its words again and again. */
const found = new WeakMap<Plan, Map<string, readonly string[]>>();

/**
 * What would be flyable in place of a plan that is not to be flown, one sentence each: what its cautions say, and the
 * least height from which the same approach is sound, where a height alone makes it so. Empty for any other plan.
 * `request` is what the plan was asked for.
 */
export function flyableWords(plan: Plan, request: PlanRequest, units: PageUnits): readonly string[] {
  if (plan.grade !== 'not-to-be-flown') return [];
  const key = JSON.stringify(units);
  const known = found.get(plan)?.get(key);
  if (known) return known;
  const start = leastSoundStart(request, heightStep(units));
  const remedies = remediesOf(cautionsOf(plan, plan.grade), plan, units);
  const words =
    start.height === undefined
      ? remedies
      : [...remedies, `${capital(startWords(start, plan.aircraft, units))}${higherPattern(plan, start.at)}.`];
  found.set(plan, (found.get(plan) ?? new Map()).set(key, words));
  return words;
}
