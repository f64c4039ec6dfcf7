import { h } from 'hastscript';
import { z } from 'zod';
import type { Gate } from '../../src/flight/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { formatHeight } from '../../src/units/format.ts';
import { approachWords, sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { planKey } from '../plan-key.ts';
import { formatGateEdge } from '../safe-rounding.ts';
import { aboveWords, belowWords, withinWords } from './gate-words.ts';

export const gates = defineComponent<PacketContext, z.ZodType>({
  name: 'gates',
  form: 'leaf',
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
            'the lowest is rounded up, the highest down. Each edge: the whole approach computed again from it.',
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

function row(gate: Gate, { plan, units }: PacketContext) {
  const height = (text: string) => h('td', { className: ['number'] }, text);
  return h('tr', [
    h('th', { scope: 'row' }, planKey(plan, gate.at).label),
    height(formatGateEdge(gate, 'low', units) ?? '–'),
    height(formatHeight(gate.plan, units)),
    height(formatGateEdge(gate, 'high', units) ?? '–'),
    h('td', belowWords(gate, plan, units)),
    h('td', withinWords(gate, plan, units)),
    h('td', aboveWords(gate, plan)),
  ]);
}
