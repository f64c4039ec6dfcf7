import { h } from 'hastscript';
import { z } from 'zod';
import type { KeyPosition, Plan } from '../../src/flight/terms/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { approachWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import { formatTime } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { placeWords } from '../../src/words/keys/place-words.ts';
import type { PacketContext } from '../context.ts';
import { markedKey } from '../grade-mark.ts';

export const keys = defineComponent<PacketContext, z.ZodType>({
  name: 'keys',
  form: 'leaf',
  onScreen: 'made-again',
  isOfTheFlight: true,
  summary: 'A table of the key positions: height, where each lies, and when it is passed.',
  attributes: z.strictObject({}),
  example: '::keys',
  render: ({ ordinal, context: { plan, units } }) => {
    const begin = plan.track[0]?.time ?? 0;
    const heads = [
      h('th', { scope: 'col' }, 'Key position'),
      h('th', { scope: 'col', className: ['number'] }, 'Height'),
      h('th', { scope: 'col' }, 'Where, seen in the landing direction'),
      h('th', { scope: 'col', className: ['number'] }, 'Time'),
    ];
    return [
      h('table', { className: ['keys'], id: `keys-${ordinal}` }, [
        h('caption', [
          captionNumber('Table'),
          ` Key positions, ${approachWords(plan)}. Heights are above the spot, times from ${start(plan)}.`,
        ]),
        h('thead', [h('tr', heads)]),
        h(
          'tbody',
          plan.keys.map((key) => row(plan, key, key.time - begin, units)),
        ),
      ]),
      h('p', { className: ['source'] }, sourceWords(plan, units)),
    ];
  },
});

function start({ power }: Plan): string {
  return power === 'idle' ? 'the closing of the throttle' : 'the moment the engine stopped';
}

function row(plan: Plan, key: KeyPosition, time: number, units: PageUnits) {
  // The glide points at the aim point and rounds out above it: a place that is not flown through has no time.
  const isAim = key.id === 'aim-point';
  const place = placeWords(key, units);
  return h('tr', [
    h('th', { scope: 'row' }, markedKey(plan, key.id, keyNames[key.id])),
    h('td', { className: ['number'] }, formatKeyHeight(key, plan.cautions, units)),
    h('td', isAim ? `${place}; the glide points here` : place),
    h('td', { className: ['number'] }, isAim ? '–' : formatTime(time)),
  ]);
}
