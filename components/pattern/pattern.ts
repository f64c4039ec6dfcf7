import { z } from 'zod';
import { patternDrawing } from '../../src/drawing/pattern/pattern.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { numberText } from '../../src/units/rounding.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawnFaults } from '../drawn-faults.ts';
import { faultAttribute } from '../fault-attribute.ts';
import { drawingId, figure, figureTitle } from '../figure.ts';

const attributes = z.strictObject({
  title: figureTitle,
  faults: faultAttribute('base-turn-late downwind-wide', 'base-turn-late'),
});

export const pattern = defineComponent<PacketContext, typeof attributes>({
  name: 'pattern',
  form: 'leaf',
  onScreen: 'made-again',
  drawsFaults: 'any',
  isOfTheFlight: true,
  summary: 'The approach seen from above, to scale; with `faults`, what each of them makes of it.',
  attributes,
  example: '::pattern',
  render: ({ ordinal, attributes: { title, faults = [] }, context }) => {
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
    return [figure({ name: 'pattern', ordinal, title, drawing, caption, source: sourceWords(plan, units) })];
  },
});
