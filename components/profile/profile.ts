import { z } from 'zod';
import { profileDrawing } from '../../src/drawing/profile.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { numberText } from '../../src/units/rounding.ts';
import { approachWords, sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawingId, figure } from '../figure.ts';

export const profile = defineComponent<PacketContext, z.ZodType>({
  name: 'profile',
  form: 'leaf',
  summary: 'Height against distance to go.',
  attributes: z.strictObject({}),
  example: '::profile',
  render: ({ ordinal, context: { plan, units, board, drawingRoom } }) => {
    const drawing = profileDrawing(plan, {
      units,
      board,
      id: drawingId('profile', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height / 2,
    });
    const times = numberText(drawing.exaggeration, 1);
    const alike = drawing.exaggeration === 1;
    const caption = `${approachWords(plan)}: height against distance to go, ${
      alike ? 'heights and distances drawn alike' : `heights drawn ${times} times as large as distances`
    }.`;
    return [figure({ name: 'profile', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});
