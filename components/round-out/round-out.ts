import { z } from 'zod';
import { roundOutDrawing } from '../../src/drawing/round-out.ts';
import { landingEnd } from '../../src/drawing/round-out-flight.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { numberText } from '../../src/units/rounding.ts';
import { approachWords, sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawingId, figure } from '../figure.ts';

export const roundOut = defineComponent<PacketContext, z.ZodType>({
  name: 'round-out',
  form: 'leaf',
  summary: 'The round-out and hold-off as flown: height of the wheels against distance, to scale.',
  attributes: z.strictObject({}),
  example: '::round-out',
  render: ({ ordinal, context: { plan, units, board, drawingRoom } }) => {
    if (!landingEnd(plan)) {
      throw new DirectiveError(
        'This flight has no round-out to draw: leave `::round-out` out, or plan another',
      );
    }
    const drawing = roundOutDrawing(plan, {
      units,
      board,
      id: drawingId('round-out', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height / 2,
    });
    const alike = drawing.exaggeration === 1;
    const caption = `Round-out and hold-off, ${approachWords(plan)}: height of the wheels against distance, ${
      alike
        ? 'heights and distances drawn alike'
        : `heights drawn ${numberText(drawing.exaggeration, 1)} times as large as distances`
    }.`;
    return [figure({ name: 'round-out', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});
