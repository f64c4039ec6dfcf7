import type { KeyId } from '../src/flight/terms/key.ts';
import type { KeyPosition, Plan } from '../src/flight/terms/plan.ts';
import { DirectiveError } from '../src/lesson/component.ts';
import { nameList } from '../src/lesson/directive-form.ts';

/** The key position of the plan. @throws DirectiveError where this approach does not have it. */
export function planKey(plan: Plan, id: KeyId): KeyPosition {
  const key = plan.keys.find((each) => each.id === id);
  if (key) return key;
  const ids = plan.keys.map((each) => each.id);
  throw new DirectiveError(
    `The ${plan.approach} approach as it is flown here has no key position \`${id}\`; it has ${nameList(ids)}`,
  );
}
