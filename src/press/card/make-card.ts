import { startWords } from '../../../components/wind-table/start-words.ts';
import { capital } from '../../drawing/grade-words.ts';
import { leastSoundStart } from '../../flight/least-sound-start.ts';
import type { Plan } from '../../flight/plan.ts';
import { heightStep } from '../../units/format.ts';
import { fingerprint } from '../fingerprint.ts';
import { NotToBeFlownError, planOf, type Scenario } from '../scenario.ts';
import type { CardInput } from './card.ts';
import { cardPapers } from './card-paper.ts';
import { type CardRequest, cardScenario } from './card-scenario.ts';

/**
 * Flies it. Throws ScenarioError for an approach that cannot be flown at all, NotToBeFlownError for one that is not to be:
 * a card is read in the air, where nobody reads twice.
 */
export function makeCard(request: CardRequest): CardInput {
  const { school, date, version } = request;
  const scenario = cardScenario(request);
  const plan = flown(scenario);
  const paper = cardPapers[request.paper];
  const { units } = school;
  return {
    plan,
    request: scenario.request,
    engineFailure: scenario.aircraft.engineFailure ?? [],
    school: school.name,
    units,
    paper,
    date,
    fingerprint: fingerprint({
      request: scenario.request,
      aircraft: scenario.aircraft,
      airfield: scenario.airfield,
      school: school.name,
      units,
      paper: paper.name,
      version,
    }),
  };
}

function flown(scenario: Scenario): Plan {
  try {
    return planOf(scenario);
  } catch (error) {
    if (error instanceof NotToBeFlownError) error.message += startThatWorks(scenario);
    throw error;
  }
}

/** The height to ask for in place of the one that is refused, where there is one, as a sentence. */
function startThatWorks({ request, aircraft, units }: Scenario): string {
  const start = leastSoundStart(request, heightStep(units));
  if (start.height === undefined) return '';
  return ` ${capital(startWords(start, aircraft, units))}.`;
}
