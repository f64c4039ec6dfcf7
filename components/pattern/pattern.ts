import { z } from 'zod';
import { patternDrawing } from '../../src/drawing/pattern.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { numberText } from '../../src/units/rounding.ts';
import { approachWords, sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawingId, figure } from '../figure.ts';

export const pattern = defineComponent<PacketContext, z.ZodType>({
  name: 'pattern',
  form: 'leaf',
  summary: 'The approach seen from above, to scale.',
  attributes: z.strictObject({}),
  example: '::pattern',
  render: ({ ordinal, context: { plan, units, board, drawingRoom } }) => {
    const drawing = patternDrawing(plan, {
      units,
      board,
      id: drawingId('pattern', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height,
    });
    const caption = `${approachWords(plan)}, seen from above, scale 1:${numberText(drawing.scale, 1)}.`;
    return [figure({ name: 'pattern', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});
