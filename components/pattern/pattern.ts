import { z } from 'zod';
import { patternDrawing } from '../../src/drawing/pattern.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { numberText } from '../../src/units/rounding.ts';
import { approachWords, sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawnFaults, mostDrawn } from '../faults/drawn-faults.ts';
import { rowIds } from '../faults/row-ids.ts';
import { drawingId, figure } from '../figure.ts';

const attributes = z.strictObject({
  faults: rowIds
    .refine((ids) => ids.length > 0 && ids.length <= mostDrawn, {
      error: `write ids of one to ${mostDrawn} faults, such as \`faults="base-turn-late downwind-wide"\``,
    })
    .describe('Faults flown and drawn over the plan, dashed, each with where it ends')
    .meta({
      takes: `ids of rows of \`faults/\`, at most ${mostDrawn}, a space between them`,
      sample: 'base-turn-late',
    })
    .optional(),
});

export const pattern = defineComponent<PacketContext, typeof attributes>({
  name: 'pattern',
  form: 'leaf',
  summary: 'The approach seen from above, to scale; with `faults`, what each of them makes of it.',
  attributes,
  example: '::pattern',
  render: ({ ordinal, attributes: { faults = [] }, context }) => {
    const { plan, units, board, drawingRoom } = context;
    const drawn = drawnFaults(faults, context);
    const drawing = patternDrawing(plan, {
      units,
      board,
      id: drawingId('pattern', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height,
      faults: drawn,
    });
    const caption = `${approachWords(plan)}, seen from above, scale 1:${numberText(drawing.scale, 1)}.${drawn.length > 0 ? ' Dashed: the same approach with one thing done wrong.' : ''}`;
    return [figure({ name: 'pattern', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});
