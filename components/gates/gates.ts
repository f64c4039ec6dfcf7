import { h } from 'hastscript';
import { z } from 'zod';
import type { Gate, Plan } from '../../src/flight/terms/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import { edgeTexts } from '../../src/words/gates/gate-band.ts';
import { aboveWords, bandNote, belowWords, withinWords } from '../../src/words/gates/gate-words.ts';
import { inHandBelow } from '../../src/words/gates/in-hand.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
import type { PacketContext } from '../context.ts';
import { markedKey } from '../grade-mark.ts';

export const gates = defineComponent<PacketContext, z.ZodType>({
  name: 'gates',
  form: 'leaf',
  onScreen: 'made-again',
  isOfTheFlight: true,
  summary:
    'A table of the band of heights at each key from which the spot is still made, and what it takes below, in and above it.',
  attributes: z.strictObject({}),
  example: '::gates',
  render: ({ ordinal, context }) => {
    const { plan, units } = context;
    if (plan.gates.length === 0) {
      throw new DirectiveError(
        'There is no band of heights to print: the spot is not made in this wind. Take `::gates` out, or another wind',
      );
    }
    const number = { scope: 'col', className: ['number'], style: 'white-space:normal' };
    const heads = [
      h('th', { scope: 'col' }, 'At'),
      h('th', number, 'Not below'),
      h('th', number, 'Plan'),
      h('th', number, 'Not above'),
      h('th', { scope: 'col' }, 'Below the band'),
      h('th', { scope: 'col' }, 'In the band'),
      h('th', { scope: 'col' }, 'Above the band'),
    ];
    return [
      h('table', { className: ['gates'], id: `gates-${ordinal}` }, [
        h('caption', [
          captionNumber('Table'),
          ` From which heights the spot is still made, ${approachWords(plan)}. Heights are above the spot, at the planned keys; ` +
            `the lowest is rounded up, the highest down. ${obstacleNote(plan)}${bandNote(context)}`,
        ]),
        h('thead', [h('tr', heads)]),
        h(
          'tbody',
          plan.gates.map((gate) => row(gate, context)),
        ),
      ]),
      h('p', { className: ['source'] }, sourceWords(plan, units)),
    ];
  },
});

/** A band is about the air alone: obstacles at heights other than the plan's are not looked for. */
function obstacleNote({ runway: { obstacles } }: Plan): string {
  return obstacles.length === 0 ? '' : 'Obstacles are looked for along the plan alone, not in the bands. ';
}

/** Under the height of a plan above the floor of its band: what it may lose. */
function inHandNote(gate: Gate, { plan, units }: PacketContext) {
  const inHand = inHandBelow(gate, plan.cautions, units);
  if (inHand === undefined || inHand.height <= 0) return [];
  return [' ', h('small', `${inHand.text} in hand below`)];
}

function row(gate: Gate, context: PacketContext) {
  const { plan, units } = context;
  const { low, high } = edgeTexts(gate, units);
  const height = (text: string) => h('td', { className: ['number'] }, text);
  return h('tr', [
    h('th', { scope: 'row' }, markedKey(plan, gate.at, keyNames[gate.at])),
    height(low),
    h('td', { className: ['number'] }, [
      formatKeyHeight({ id: gate.at, height: gate.plan }, plan.cautions, units),
      ...inHandNote(gate, context),
    ]),
    height(high),
    h('td', belowWords(gate, context)),
    h('td', withinWords(gate, context)),
    h('td', aboveWords(gate, context)),
  ]);
}
