import type { Element } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import { indicatedSpeed } from '../../src/flight/calibration.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { formatDistance, formatHeight, formatSpeed } from '../../src/units/format.ts';
import { approachWords, conditionWords, sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { ownFile } from '../own-file.ts';
import { formatGateEdge } from '../safe-rounding.ts';
import { type ByWind, byWind, notSound } from './by-wind.ts';
import { shortLine } from './short-line.ts';

// Half of A4 across (ISO 216 A6 is 148 x 105 mm). Read at arm's length: nothing on it is smaller than 12 pt
// (common practice for cockpit cards, no source).
const card =
  'width:148mm;max-width:100%;min-height:105mm;padding:4mm 5mm;border:.6pt dashed #000;font:12pt/14.5pt var(--sans);' +
  'break-inside:avoid';
const twoSides =
  'display:grid;grid-template-columns:auto auto;column-gap:6mm;align-items:start;justify-content:space-between';
const inCard = 'font:12pt/14.5pt var(--sans);min-width:0;margin:0';
const cell = 'padding:1.4mm 3mm 1.4mm 0;font-size:12pt;line-height:14.5pt';

export const kneeboard = defineComponent<PacketContext, z.ZodType>({
  name: 'kneeboard',
  form: 'leaf',
  summary:
    "A card to cut out, A6, in big type: keys and heights with their bands, the base turn by wind, the engine-failure list's catchwords.",
  attributes: z.strictObject({}),
  example: '::kneeboard',
  render: ({ ordinal, context }) => {
    const { plan, units } = context;
    const { head, rows } = byWind(context);
    const speed = (eas: number) => formatSpeed(indicatedSpeed(eas, plan.aircraft), units);
    return [
      h('figure', { className: ['kneeboard'], id: `kneeboard-${ordinal}` }, [
        h('div', { className: ['card'], style: card }, [
          h('p', { style: 'margin:0;font-weight:600' }, `${plan.aircraft.name}: ${approachWords(plan)}`),
          h('p', { style: 'margin:0 0 3mm' }, [
            `${sentence(conditionWords(plan, units))}. Glide `,
            h('b', speed(plan.flown.glideSpeed)),
            ', approach ',
            h('b', speed(plan.flown.approachSpeed)),
            '.',
          ]),
          h('div', { style: twoSides }, [keyTable(context), windTable(head, rows)]),
          ...failureLines(context),
        ]),
        h('figcaption', { style: 'break-after:auto' }, [
          captionNumber('Figure'),
          ' A card for the knee: copy it, or cut it out of a page with nothing on its back. Heights are above the spot; in brackets, from where the spot is still made',
          rows.some(({ figure }) => figure === notSound)
            ? `; “${notSound}”: do not fly it in that wind (the plan’s own caution). `
            : '. ',
          h('span', { className: ['source'] }, sourceWords(plan, units)),
        ]),
      ]),
    ];
  },
});

function keyTable({ plan, units }: PacketContext): Element {
  const aim = plan.keys.find(({ id }) => id === 'aim-point');
  // Where no height is an edge, nothing beyond the plan itself was found to be sound.
  const rows = plan.keys
    .filter(({ id }) => id !== 'aim-point' && id !== 'touchdown')
    .map(({ id, label, height }) => {
      const gate = plan.gates.find(({ at }) => at === id);
      const low = gate && (formatGateEdge(gate, 'low', units) ?? 'the plan');
      const high = gate && (formatGateEdge(gate, 'high', units) ?? 'the plan');
      return tableRow([label, formatHeight(height, units)], gate ? `(${low} to ${high})` : '');
    });
  const before =
    aim &&
    tableRow(
      ['Aim point', formatDistance(Math.abs(aim.along), units)],
      aim.along < 0 ? 'before the spot' : 'past the spot',
    );
  return h('table', { style: inCard, ariaLabel: 'Key positions' }, [
    h('tbody', before ? [...rows, before] : rows),
  ]);
}

function windTable(head: ByWind['head'], rows: ByWind['rows']): Element {
  return h('table', { style: inCard, ariaLabel: head }, [
    h('thead', [h('tr', [h('th', { colSpan: 2, scope: 'col', style: cell }, head)])]),
    h(
      'tbody',
      rows.map(({ wind, figure }) => tableRow([wind, figure])),
    ),
  ]);
}

function tableRow([name, figure]: readonly [string, string], after?: string): Element {
  return h('tr', [
    h('th', { scope: 'row', style: `${cell};white-space:nowrap` }, name),
    h('td', { className: ['number'], style: `${cell};font-weight:600` }, figure),
    ...(after === undefined ? [] : [h('td', { style: `${cell};white-space:nowrap` }, after)]),
  ]);
}

/** Catchwords of the aircraft's own list; nothing where its file has none. */
function failureLines(context: PacketContext): Element[] {
  const lines = ownFile(context)?.file.engineFailure ?? [];
  if (lines.length === 0) return [];
  return [
    h('p', { style: 'margin:3mm 0 0;border-top:.6pt solid #000;padding-top:1.5mm' }, [
      h('b', 'Engine failure. '),
      ...lines.flatMap((line, i) => [
        h('span', { style: 'white-space:nowrap' }, [h('b', `${i + 1} `), shortLine(line)]),
        i < lines.length - 1 ? '  ' : '',
      ]),
    ]),
  ];
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
