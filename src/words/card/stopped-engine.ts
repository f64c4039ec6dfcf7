import { planApproach } from '../../flight/plan/planner.ts';
import { leastSoundStart } from '../../flight/questions/least-sound-start.ts';
import { RequestError } from '../../flight/terms/errors.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { formatHeight, heightStep } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { requestSentence } from '../refusals/request-words.ts';
import { cautionWords, startWords } from '../winds/start-words.ts';

/** The keys to print beside an engine-failure list, or a sentence that says why there are none. */
export type StoppedEngine = { readonly plan: Plan } | { readonly plan: undefined; readonly why: string };

/**
 * The approach of a plan with the engine stopped, in the same setting. A list for a stopped engine is never printed
 * beside keys flown with the engine idling; and there are no keys where the aircraft has no glide with it stopped, or
 * the approach is not to be flown without an engine.
 */
export function stoppedEngine(plan: Plan, request: PlanRequest, units: PageUnits): StoppedEngine {
  const { aircraft } = plan;
  if (plan.power === 'stopped') return { plan };
  if (!aircraft.glide.stopped) {
    return none('No key heights: its file gives no glide with the engine stopped.');
  }
  const stopped: PlanRequest = { ...request, power: 'stopped', detail: 'whole' };
  try {
    const found = planApproach(stopped);
    if (found.made && found.grade !== 'not-to-be-flown') return { plan: found };
    const from = formatHeight(found.track[0]!.height, units);
    const against = found.cautions.filter(({ grade }) => grade === 'not-to-be-flown');
    const said = cautionWords(against, aircraft, units);
    const start = startWords(leastSoundStart(stopped, heightStep(units)), aircraft, units, said);
    return none(`Not to be flown from ${from}: ${said}; ${start}.`);
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    return none(`Cannot be flown: ${requestSentence(error, units)}.`);
  }
}

const none = (why: string): StoppedEngine => ({ plan: undefined, why });
