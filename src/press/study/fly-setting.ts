import { planApproach } from '../../flight/plan/planner.ts';
import { RequestError } from '../../flight/terms/errors.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { cautionSentence } from '../../words/cautions/caution-words.ts';
import { cautionsOf, remediesOf } from '../../words/cautions/grade-sentences.ts';
import { pageSteps } from '../../words/figures/format.ts';
import { capital } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { requestSentence } from '../../words/refusals/request-words.ts';
import { mistake } from './plain-reason.ts';

/** A setting as flown, or why it gives no figures: it cannot be flown, or its plan is not to be flown. */
export type Flown =
  | { readonly given: true; readonly plan: Plan }
  | { readonly given: false; readonly plan: Plan | undefined; readonly why: string };

/** `shown`: the packet's own setting, which may be that of a lesson that shows a plan not to be flown. */
export function flySetting(request: PlanRequest, units: PageUnits, shown = false): Flown {
  try {
    const plan = planApproach({ ...request, steps: pageSteps(units) });
    if (plan.made && (shown || plan.grade !== 'not-to-be-flown')) return { given: true, plan };
    const grave = cautionsOf(plan, 'not-to-be-flown');
    const words = [
      ...grave.map((caution) => cautionSentence(caution, plan, units)),
      ...remediesOf(grave, plan, units),
    ].join(' ');
    return { given: false, plan, why: words || 'The approach does not reach the spot.' };
  } catch (error) {
    if (!(error instanceof RequestError)) {
      reportError(error);
      return { given: false, plan: undefined, why: mistake };
    }
    const words = requestSentence(error, units);
    return {
      given: false,
      plan: undefined,
      why: `${capital(words).replace(/\.?$/, '.')}`,
    };
  }
}
