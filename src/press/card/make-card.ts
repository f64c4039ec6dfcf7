import { fingerprint } from '../packet/fingerprint.ts';
import { planOf } from '../packet/scenario.ts';
import type { CardInput } from './card.ts';
import { cardPapers } from './card-paper.ts';
import { type CardRequest, cardScenario } from './card-scenario.ts';

/**
 * Flies a card. Throws ScenarioError for an approach that cannot be flown at all, and NotToBeFlownError for one that
 * is not to be: a card is read in the air, where nobody reads twice.
 */
export function makeCard(request: CardRequest): CardInput {
  const { school, date, version } = request;
  const scenario = cardScenario(request);
  const plan = planOf(scenario);
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
