import type { Approach } from '../../flight/terms/approach.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import type { School } from '../../school/school.ts';
import { type Choices, type Scenario, scenarioOf } from '../packet/scenario.ts';
import type { CardPaperName } from './card-paper.ts';

/** What a card is asked for. */
export interface CardRequest {
  readonly school: School;
  readonly aircraftId: string;
  readonly approach: Approach;
  readonly choices: Choices;
  /** m above the spot at the start; left out, the default of `PlanRequest`. */
  readonly height?: number | undefined;
  readonly paper: CardPaperName;
  readonly date: Date;
  /** Version of this program: another version may compute other figures. */
  readonly version: string;
}

/**
 * What a lesson that sets nothing but its approach is computed for: the figures of a card are those of that lesson's
 * packet. Throws ScenarioError for a name that the school does not have.
 */
export function cardScenario({ school, aircraftId, approach, choices, height }: CardRequest): Scenario {
  const lesson: FrontMatter = { title: 'Card', approach, height };
  return scenarioOf(school, lesson, aircraftId, choices);
}
