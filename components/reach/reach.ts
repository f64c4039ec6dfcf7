import { z } from 'zod';
import { reachDrawing } from '../../src/drawing/reach/reach.ts';
import { reachField } from '../../src/drawing/reach/reach-ground.ts';
import { windAt } from '../../src/flight/air/wind.ts';
import { type Position, reachFrom } from '../../src/flight/flying/reach.ts';
import { angleBetween } from '../../src/flight/numerics/angle.ts';
import { workOut } from '../../src/flight/plan/planner.ts';
import type { KeyId } from '../../src/flight/terms/key.ts';
import type { KeyPosition, Plan } from '../../src/flight/terms/plan.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { quantity } from '../../src/school/fields.ts';
import { numberText } from '../../src/units/rounding.ts';
import { sourceWords } from '../../src/words/approaches/approach-words.ts';
import { formatHeight } from '../../src/words/figures/format.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';
import { drawingId, figure } from '../figure.ts';
import { planKey } from '../plan-key.ts';
import { fieldsBeside } from './fields-beside.ts';

const attributes = z.strictObject({
  height: quantity('length', '100 ft', '5000 ft', '1000ft')
    .describe('Height above the spot where the glide begins; left out, as planned at that key')
    .optional(),
  at: nameOf(keyNames)
    .describe('The key position above which it begins; left out, the downwind key')
    .optional(),
});

export const reach = defineComponent<PacketContext, typeof attributes>({
  name: 'reach',
  form: 'leaf',
  onScreen: 'made-again',
  isOfTheFlight: true,
  summary:
    'The ground that the glide gets to from a key position, to scale, with the fields of the airfield.',
  attributes,
  example: '::reach{height=1000ft at=downwind-key}',
  render: ({ ordinal, attributes: { height, at }, context }) => {
    const { plan, request, units, board, drawingRoom } = context;
    const key = startKey(plan, at as KeyId | undefined);
    const from = positionAt(plan, key, height ?? key.height);
    const { conditions } = workOut({ ...request, detail: 'flight' }).resolved;
    const { bank } = plan.flown;
    const outline = reachFrom(from, bank, conditions);
    const { fields, unplaced } = fieldsBeside(context);
    const drawing = reachDrawing(
      {
        plan,
        from,
        label: keyNames[key.id],
        bank,
        aloft: windAt(conditions.wind, from.height, plan.runway.heading),
        outline,
        fields: fields.map((field) => reachField(field, plan.runway.heading, outline)),
        elsewhere:
          unplaced.length > 0
            ? `Not drawn, their place beside runway ${plan.runway.name} not being known: ${unplaced.join(', ')}.`
            : undefined,
      },
      {
        units,
        board,
        id: drawingId('reach', ordinal),
        maxWidth: drawingRoom.width,
        maxHeight: drawingRoom.height,
      },
    );
    const engine = plan.power === 'idle' ? 'idling' : 'stopped';
    const caption =
      `Ground that the glide gets to, engine ${engine}, from ${formatHeight(from.height, units)} at the ` +
      `${keyNames[key.id].toLowerCase()} of runway ${plan.runway.name}, seen from above, scale 1:${numberText(drawing.scale, 1)}.`;
    return [figure({ name: 'reach', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});

/** The key asked for; if none is, the downwind key, or the first key of an approach that has none. */
function startKey(plan: Plan, id: KeyId | undefined): KeyPosition {
  const downwind = plan.keys.find((key) => key.id === 'downwind-key');
  const key = id === undefined ? (downwind ?? plan.keys[0]!) : planKey(plan, id);
  if (key.id !== 'aim-point' && key.id !== 'touchdown') return key;
  throw new DirectiveError(
    `No glide begins at \`${key.id}\`: write a key position in the air, such as \`at=downwind-key\``,
  );
}

/** Where the key is, heading along the track there. */
function positionAt({ track, runway }: Plan, { along, across, time }: KeyPosition, height: number): Position {
  const sample = track.reduce((best, each) =>
    Math.abs(each.time - time) < Math.abs(best.time - time) ? each : best,
  );
  return { along, across, height, heading: angleBetween(runway.heading, sample.heading) };
}
