import { z } from 'zod';
import { profileDrawing } from '../../src/drawing/profile/profile.ts';
import { isInProfile } from '../../src/drawing/profile/profile-fault-places.ts';
import { timesText } from '../../src/drawing/profile/profile-words.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import { leastFinal } from '../../src/words/gates/least-final.ts';
import type { PacketContext } from '../context.ts';
import { drawnFaults } from '../drawn-faults.ts';
import { faultAttribute } from '../fault-attribute.ts';
import { drawingId, figure, figureTitle } from '../figure.ts';

const attributes = z.strictObject({
  title: figureTitle,
  faults: faultAttribute('base-turn-late base-turn-early', 'base-turn-late'),
});

export const profile = defineComponent<PacketContext, typeof attributes>({
  name: 'profile',
  form: 'leaf',
  onScreen: 'made-again',
  drawsFaults: 'any',
  isOfTheFlight: true,
  summary: 'Height against distance to go; with `faults`, what each of them makes of it.',
  attributes,
  example: '::profile',
  render: ({ ordinal, attributes: { title, faults = [] }, context }) => {
    const { plan, request, units, board, drawingRoom } = context;
    const drawn = drawnFaults(faults, context);
    for (const [index, fault] of drawn.entries()) {
      if (isInProfile(plan, fault)) continue;
      throw new DirectiveError(
        `The fault \`${faults[index]}\` ends in the circles, which this drawing leaves out: draw it with \`::pattern\` instead`,
      );
    }
    const drawing = profileDrawing(plan, {
      units,
      board,
      id: drawingId('profile', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height / 2,
      leastFinal: leastFinal(request),
      faults: drawn,
    });
    const times = timesText(drawing.exaggeration);
    const alike = drawing.exaggeration === 1;
    const caption = `${approachWords(plan)}: height against distance to go, ${
      alike ? 'heights and distances drawn alike' : `heights drawn ${times} times as large as distances`
    }.${drawn.length > 0 ? ' Dashed: the same approach with one thing done wrong.' : ''}`;
    return [figure({ name: 'profile', ordinal, title, drawing, caption, source: sourceWords(plan, units) })];
  },
});
