import type { Approach } from '../../flight/plan.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import type { School } from '../../school/school.ts';
import { fingerprint } from '../fingerprint.ts';
import { type Choices, planOf, type Scenario, scenarioOf } from '../scenario.ts';
import type { CardInput } from './card.ts';
import { type CardPaperName, cardPapers } from './card-paper.ts';

/** What a card is asked for. */
export interface CardRequest {
  readonly school: School;
  readonly aircraftId: string;
  readonly approach: Approach;
  readonly choices: Choices;
  readonly paper: CardPaperName;
  readonly date: Date;
  /** Version of this program: another one may compute another figure. */
  readonly version: string;
}

/**
 * What a lesson is computed for that sets nothing but its approach: the figures of a card are those of that lesson's
 * packet. Throws ScenarioError for a name that the school does not have.
 */
export function cardScenario({ school, aircraftId, approach, choices }: CardRequest): Scenario {
  const lesson: FrontMatter = { title: 'Card', approach };
  return scenarioOf(school, lesson, aircraftId, choices);
}

/** Flies it. Throws ScenarioError for an approach that cannot be flown. */
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
