import { join } from 'node:path';
import { fileId } from '../../school/file-id.ts';
import type { PrintOrder } from '../printing/order.ts';
import { packetKey, schoolFor } from '../printing/packet-key.ts';
import { ScenarioError } from '../scenario.ts';
import { cardPapers } from './card-paper.ts';
import { type CardRequest, cardScenario } from './make-card.ts';

/**
 * A card, with where it belongs. Throws ScenarioError for a name that the school does not have; `failed` is told of an
 * approach that cannot be flown. `common` is that of `PacketSource`.
 */
export function cardOrder(
  request: CardRequest,
  common: unknown,
  failed: (error: ScenarioError) => void,
): PrintOrder {
  const { school, aircraftId, approach, choices, date } = request;
  const scenario = cardScenario(request);
  const paper = cardPapers[request.paper];
  const airfieldId = choices.airfield ?? school.defaults.airfield;
  const name = [aircraftId, airfieldId, fileId(scenario.request.runway.name), approach].join('-');
  return {
    path: join('cards', `${name}.${paper.name}`),
    paper,
    date,
    key: () =>
      packetKey({
        ...{ lesson: '', scenario, paper: paper.name, edition: 'student', common },
        school: schoolFor(school, aircraftId),
      }),
    open: async () => async (trial) => {
      const [{ fitCard }, { makeCard }] = await Promise.all([
        import('./fit-card.ts'),
        import('./make-card.ts'),
      ]);
      try {
        return { ...(await fitCard(trial, makeCard(request))), messages: [], pictures: [] };
      } catch (error) {
        if (!(error instanceof ScenarioError)) throw error;
        failed(error);
        return undefined;
      }
    },
    hear: () => undefined,
  };
}
