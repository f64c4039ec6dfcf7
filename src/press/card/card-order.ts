import { join } from 'node:path';
import { VFile } from 'vfile';
import { fileId } from '../../school/file-id.ts';
import type { GradeTally } from '../packet/grade-tally.ts';
import { attemptFor, type WrongChoices } from '../packet/lesson-messages.ts';
import { NotToBeFlownError } from '../packet/scenario.ts';
import { sayAgain } from '../printing/kept-messages.ts';
import type { PrintOrder } from '../printing/order.ts';
import { packetKey, schoolFor } from '../printing/packet-key.ts';
import { cardPapers } from './card-paper.ts';
import { type CardRequest, cardScenario } from './card-scenario.ts';

/** Where everything said about cards goes. */
export interface CardSaid {
  /** How each choice was asked for, by the front matter key that it overrides. */
  readonly asked: Readonly<Record<string, string>>;
  /** Takes what is wrong with those choices. */
  readonly choices: WrongChoices;
  readonly tally: GradeTally;
}

/**
 * A card, its place, and the file that takes its messages. Throws ScenarioError for a name that the school does not
 * have. `common` is that of `PacketSource`.
 */
export function cardOrder(
  request: CardRequest,
  common: unknown,
  { asked, choices, tally }: CardSaid,
): { readonly order: PrintOrder; readonly file: VFile } {
  const { school, aircraftId, approach, date } = request;
  const scenario = cardScenario(request);
  const paper = cardPapers[request.paper];
  const airfieldId = request.choices.airfield ?? school.defaults.airfield;
  const name = [aircraftId, airfieldId, fileId(scenario.request.runway.name), approach].join('-');
  const path = join('cards', `${name}.${paper.name}`);
  const file = new VFile({ path });
  const attempt = attemptFor({ file, source: undefined }, asked, choices);
  const order: PrintOrder = {
    path,
    date,
    key: () =>
      packetKey({
        ...{ lesson: '', scenario, paper: paper.name, edition: 'student', common },
        school: schoolFor(school, aircraftId),
      }),
    open: async () => async (print) => {
      const [{ fitCard }, { makeCard }, { gradeMessages }, { sayOfPlan }] = await Promise.all([
        import('./fit-card.ts'),
        import('./make-card.ts'),
        import('../packet/grade-messages.ts'),
        import('../packet/say-of-plan.ts'),
      ]);
      const input = attempt(() => {
        try {
          return makeCard(request);
        } catch (error) {
          if (error instanceof NotToBeFlownError) tally.refuse();
          throw error;
        }
      });
      if (!input) return undefined;
      for (const message of gradeMessages(input.plan, scenario))
        sayOfPlan(message, { file, source: undefined });
      const { document } = await fitCard(print, input);
      return { document, messages: file.messages, pictures: [], grades: [input.plan.grade] };
    },
    hear: (message) => sayAgain(message, file),
    graded: (grades) => tally.add(grades),
  };
  return { order, file };
}
