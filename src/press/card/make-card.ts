import { join } from 'node:path';
import type { Approach } from '../../flight/plan.ts';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { fileId } from '../../school/file-id.ts';
import type { School } from '../../school/school.ts';
import { fingerprint } from '../fingerprint.ts';
import { type Choices, planOf, scenarioOf } from '../scenario.ts';
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

/** A card with where it belongs under the output folder, without an ending. */
export interface MadeCard {
  readonly path: string;
  readonly input: CardInput;
}

/**
 * Flies the approach as a lesson that sets nothing but its approach would: the figures are those of that lesson's packet.
 * Throws ScenarioError for a name that the school does not have, or an approach that cannot be flown.
 */
export function makeCard(request: CardRequest): MadeCard {
  const { school, aircraftId, approach, choices, date, version } = request;
  const lesson: FrontMatter = { title: 'Card', approach };
  const scenario = scenarioOf(school, lesson, aircraftId, choices);
  const plan = planOf(scenario);
  const paper = cardPapers[request.paper];
  const { units } = school;
  const airfieldId = choices.airfield ?? school.defaults.airfield;
  const name = [aircraftId, airfieldId, fileId(plan.runway.name), approach].join('-');
  return {
    path: join('cards', `${name}.${paper.name}`),
    input: {
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
    },
  };
}
