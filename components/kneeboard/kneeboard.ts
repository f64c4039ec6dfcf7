import type { Element, Properties } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import type { Grade } from '../../src/flight/terms/caution.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { approachWords, conditionWords, sourceWords } from '../../src/words/approaches/approach-words.ts';
import { byWind } from '../../src/words/card/by-wind.ts';
import { type GradedLine, gradedLines, placeLine } from '../../src/words/card/card-words.ts';
import { finalLine } from '../../src/words/card/final-line.ts';
import { shortLine } from '../../src/words/card/short-line.ts';
import { stoppedEngine } from '../../src/words/card/stopped-engine.ts';
import { formatSpeed } from '../../src/words/figures/format.ts';
import { capital, lowerFirst } from '../../src/words/figures/letter-case.ts';
import type { PacketContext } from '../context.ts';
import { engineLabel, type KeyTableDress, keysTable } from '../keys-table.ts';
import { ownFile } from '../own-file.ts';

// As wide as A5, and at least half as high (ISO 216: 148 x 210 mm, A6 105 mm). Read at arm's length: nothing on it is smaller than 12 pt
// (common practice for cockpit cards, no source).
const card =
  'width:148mm;max-width:100%;min-height:105mm;padding:4mm 5mm;border:.6pt dashed #000;font:12pt/14.5pt var(--sans);' +
  'break-inside:avoid';
const inCard = 'font:12pt/14.5pt var(--sans);min-width:0;margin:0;width:100%';
const cell = 'padding:.8mm 1mm .8mm 1.5mm;font-size:12pt;line-height:14.5pt;white-space:nowrap';
const number = `${cell};text-align:right`;
const opening = ';border-left:1.2pt solid #000';
const line = 'margin:1.5mm 0 0';

export const kneeboard = defineComponent<PacketContext, z.ZodType>({
  name: 'kneeboard',
  form: 'leaf',
  summary:
    'A card to cut out, as wide as A5, in big type: what the flight is to be warned of, keys and heights with their bands with the engine ' +
    "idling and stopped, the base turn by wind, the engine-failure list's catchwords.",
  attributes: z.strictObject({}),
  example: '::kneeboard',
  render: ({ ordinal, context }) => {
    const { plan, request, units } = context;
    const stopped = stoppedEngine(plan, request, units);
    // The engine that the list beside them is for comes last, nearest to the list.
    const plans = stopped.plan && stopped.plan !== plan ? [plan, stopped.plan] : [plan];
    const winds = byWind(plan, request, units);
    const speed = (eas: number) => formatSpeed(indicatedSpeed(eas, plan.aircraft), units);
    const { by, or } = finalLine(request, units);
    return [
      h('figure', { className: ['kneeboard'], id: `kneeboard-${ordinal}` }, [
        h('div', { className: ['card'], style: card }, [
          ...gradedLines(plan, units).map((graded) => band(graded)),
          h('p', { style: 'margin:0;font-weight:600' }, `${plan.aircraft.name}: ${approachWords(plan)}`),
          h('p', { style: 'margin:0 0 1.5mm' }, [
            `${capital(conditionWords(plan, units))}. Glide `,
            h('b', speed(plan.flown.glideSpeed)),
            ', approach ',
            h('b', speed(plan.flown.approachSpeed)),
            '.',
          ]),
          keysTable(plans, units, dress, {
            head: { type: 'text', value: `Above the spot, ${units.height}` },
            label: { style: inCard, ariaLabel: 'Key positions' },
          }),
          h('p', { style: line }, placeLine(plans, units) ?? ''),
          h('p', { style: line }, [h('b', by), `, ${or}.`]),
          ...(stopped.plan && stopped.plan !== plan
            ? gradedLines(stopped.plan, units).map((graded) => band(graded, stopped.plan))
            : []),
          ...failureLines(context, stopped.plan === undefined ? stopped.why : undefined),
          windTable(winds, plan),
        ]),
        h('figcaption', { style: 'break-after:auto' }, [
          captionNumber('Figure'),
          ' A card for the knee: copy it, or cut it out of a page with nothing on its back. Heights are above the spot; from, to: from where the spot is still made. ',
          h('span', { className: ['source'] }, sourceWords(plan, units)),
        ]),
      ]),
    ];
  },
});

const bands: Readonly<Record<Grade, string>> = {
  'not-to-be-flown':
    'background:#000;color:#fff;print-color-adjust:exact;border:1.6pt solid #000;padding:1mm 2mm',
  'beyond-good-practice': 'border:1.6pt solid #000;padding:1mm 2mm',
  'worth-knowing': 'border-left:1.6pt solid #000;padding:0 2mm',
};

/** A band for each grade, for the flight that the card is for where no other is named. */
function band({ grade, name, words }: GradedLine, of?: Plan): Element {
  const who = of ? `${engineLabel(of)}: ` : '';
  return h('p', { className: ['grade-band', grade], style: `margin:0 0 1.5mm;${bands[grade]}` }, [
    h('b', `${who}${of ? lowerFirst(name) : name}: `),
    `${words}.`,
  ]);
}

const dress: KeyTableDress = {
  of: (part, opens): Properties => {
    const edge = opens ? opening : '';
    switch (part) {
      case 'group':
        return { style: `${cell};text-align:center;font-weight:600${edge}` };
      case 'key':
        return { style: `${cell};padding-left:0;text-align:left` };
      case 'height':
        return { className: ['number', 'key-height'], style: `${number};font-weight:600${edge}` };
      default:
        return { className: ['number'], style: `${number}${edge}` };
    }
  },
  height: (text) => [{ type: 'text', value: text }],
  mark: (label) =>
    h('span', {
      role: 'img',
      ariaLabel: label,
      style: 'display:inline-block;width:2.6mm;height:2.6mm;border:.8pt solid #000;margin-right:1mm',
    }),
};

function windTable({ head, winds, rows, notes }: ReturnType<typeof byWind>, plan: Plan): Element {
  const label = `${engineLabel(plan)}: ${head}`;
  return h('div', { style: 'margin-top:1.5mm' }, [
    h('table', { style: inCard, ariaLabel: label }, [
      h('thead', [
        h('tr', [
          h('th', { scope: 'col', style: `${cell};padding-left:0;white-space:normal` }, label),
          ...winds.map((wind) => h('th', { scope: 'col', className: ['number'], style: number }, wind)),
        ]),
      ]),
      h(
        'tbody',
        rows.map(({ name, cells }) =>
          h('tr', [
            h('th', { scope: 'row', style: `${cell};padding-left:0` }, name),
            ...cells.map((text) =>
              h('td', { className: ['number'], style: `${number};font-weight:600` }, text),
            ),
          ]),
        ),
      ),
    ]),
    ...(notes.length === 0 ? [] : [h('p', { style: 'margin:0' }, notes.join(' '))]),
  ]);
}

/**
 * Catchwords from the aircraft's own list; nothing where its file has none. `why`: why there are no keys of a stopped
 * engine above.
 */
function failureLines(context: PacketContext, why: string | undefined): Element[] {
  const lines = ownFile(context)?.file.engineFailure ?? [];
  if (lines.length === 0 && why === undefined) return [];
  return [
    h('p', { style: `${line};border-top:.6pt solid #000;padding-top:1mm` }, [
      ...(lines.length === 0 ? [] : [h('b', 'Engine failure. ')]),
      ...lines.flatMap((text, i) => [
        h('span', { style: 'white-space:nowrap' }, [h('b', `${i + 1} `), shortLine(text)]),
        i < lines.length - 1 ? '  ' : '',
      ]),
      ...(why === undefined ? [] : [lines.length === 0 ? '' : '. ', h('b', 'Engine stopped: '), why]),
    ]),
  ];
}
