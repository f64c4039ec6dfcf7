import { RequestError } from '../../flight/errors.ts';
import type { Plan, PlanRequest } from '../../flight/plan.ts';
import { planApproach } from '../../flight/planner.ts';
import { mistake } from './plain-reason.ts';

/** A setting as flown, or why it can not be. Of one that does not reach the spot there is a plan, which is not to be flown. */
export type Flown =
  | { readonly made: true; readonly plan: Plan }
  | { readonly made: false; readonly plan: Plan | undefined; readonly why: string };

export function flySetting(request: PlanRequest): Flown {
  try {
    const plan = planApproach(request);
    if (plan.made) return { made: true, plan };
    const why = plan.cautions.filter(({ code }) => code === 'beyond-reach' || code === 'wind-over-glide');
    const words = (why.length > 0 ? why : plan.cautions).map(({ message }) => message).join(' ');
    return { made: false, plan, why: words || 'The approach does not reach the spot.' };
  } catch (error) {
    if (!(error instanceof RequestError)) {
      reportError(error);
      return { made: false, plan: undefined, why: mistake };
    }
    const { message } = error;
    return {
      made: false,
      plan: undefined,
      why: `${message.charAt(0).toUpperCase()}${message.slice(1).replace(/\.?$/, '.')}`,
    };
  }
}
