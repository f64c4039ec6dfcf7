import { z } from 'zod';
import { finalSightDrawing } from '../../src/drawing/final-sight/final-sight.ts';
import { sightsOf } from '../../src/drawing/final-sight/final-sight-view.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawingId, figure } from '../figure.ts';

export const finalSight = defineComponent<PacketContext, z.ZodType>({
  name: 'final-sight',
  form: 'leaf',
  onScreen: 'made-again',
  isOfTheFlight: true,
  summary: 'The runway as seen on final when low, right and high: true perspective, one angular scale.',
  attributes: z.strictObject({}),
  example: '::final-sight',
  render: ({ ordinal, context: { plan, units, board, drawingRoom } }) => {
    if (!sightsOf(plan)) {
      throw new DirectiveError(
        'This flight has no final leg towards an aim point: leave `::final-sight` out, or plan another',
      );
    }
    const drawing = finalSightDrawing(plan, {
      units,
      board,
      id: drawingId('final-sight', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height * 0.7,
    });
    const caption = `The runway as seen on final, low, right and high: ${approachWords(plan)}. True perspective.`;
    return [figure({ name: 'final-sight', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});
