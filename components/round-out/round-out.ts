import { z } from 'zod';
import { roundOutDrawing } from '../../src/drawing/round-out/round-out.ts';
import { landingFault, type NotInLanding } from '../../src/drawing/round-out/round-out-faults.ts';
import { type LandingEnd, landingEnd } from '../../src/drawing/round-out/round-out-flight.ts';
import type { DrawnFault } from '../../src/drawing/shared/drawn-fault.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { numberText } from '../../src/units/rounding.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import type { PacketContext } from '../context.ts';
import { drawnFaults } from '../drawn-faults.ts';
import { faultAttribute } from '../fault-attribute.ts';
import { drawingId, figure } from '../figure.ts';

const attributes = z.strictObject({ faults: faultAttribute('round-out-high balloon', 'balloon') });

export const roundOut = defineComponent<PacketContext, typeof attributes>({
  name: 'round-out',
  form: 'leaf',
  onScreen: 'made-again',
  drawsFaults: 'of-the-landing',
  isOfTheFlight: true,
  summary:
    'The round-out and hold-off as flown: height of the wheels against distance, to scale; with `faults`, what each of them makes of it.',
  attributes,
  example: '::round-out',
  render: ({ ordinal, attributes: { faults = [] }, context }) => {
    const { plan, units, board, drawingRoom } = context;
    const end = landingEnd(plan);
    if (!end) {
      throw new DirectiveError(
        'This flight has no round-out to draw: leave `::round-out` out, or plan another',
      );
    }
    const drawn = landingFaults(faults, end, context);
    const drawing = roundOutDrawing(plan, {
      units,
      board,
      id: drawingId('round-out', ordinal),
      maxWidth: drawingRoom.width,
      maxHeight: drawingRoom.height / 2,
      faults: drawn,
    });
    const alike = drawing.exaggeration === 1;
    const caption = `Round-out and hold-off, ${approachWords(plan)}: height of the wheels against distance, ${
      alike
        ? 'heights and distances drawn alike'
        : `heights drawn ${numberText(drawing.exaggeration, 1)} times as large as distances`
    }.${drawn.length > 0 ? ' Dashed: the same landing with one thing done wrong.' : ''}`;
    return [figure({ name: 'round-out', ordinal, drawing, caption, source: sourceWords(plan, units) })];
  },
});

function landingFaults(names: readonly string[], end: LandingEnd, context: PacketContext): DrawnFault[] {
  const faults = drawnFaults(names, context);
  for (const [index, fault] of faults.entries()) {
    const part = landingFault(end, fault);
    if (typeof part === 'string') {
      throw new DirectiveError(`The fault \`${names[index]}\` ${whyNot[part](fault)}`);
    }
  }
  return faults;
}

const whyNot: Readonly<Record<NotInLanding, (fault: DrawnFault) => string>> = {
  'no-round-out': () =>
    'meets the ground before the round-out: draw it with `::pattern` or `::profile` instead',
  'ends-too-far-off': ({ end }) =>
    `ends ${end}, too far off for this drawing: draw it with \`::pattern\` or \`::profile\` instead`,
  'as-planned': () => 'takes the wheels along the planned path today: leave it out of `::round-out`',
};
