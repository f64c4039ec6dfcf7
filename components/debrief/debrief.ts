import type { Element } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import type { KeyPosition } from '../../src/flight/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { formatHeight } from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { sourceWords } from '../approach-words.ts';
import type { PacketContext } from '../context.ts';
import { placeWords } from '../place-words.ts';
import { gradeRow } from './grade-row.ts';

/** Graded where the lesson states no standards of its own. */
const generalLines = [
  'Looks out, and says what is going to be done before it is done.',
  'Holds the speed.',
  'Flies the turns with the bank planned, and no steeper to save one.',
  'Calls each key, and says high, low or good.',
  'Puts an error right where it is first seen, or breaks off in good time.',
  'Rounds out, holds off and lands under control.',
];

export const debrief = defineComponent<PacketContext, z.ZodType>({
  name: 'debrief',
  form: 'leaf',
  summary:
    "A form for after the flight: planned against flown at each key, and the lesson's standards graded in the school's own words.",
  attributes: z.strictObject({}),
  example: '::debrief',
  render: ({ ordinal, context: { plan, school, units } }) => {
    const id = `debrief-${ordinal}`;
    const col = { scope: 'col' };
    const room = (width: number) => ({ ...col, style: `width:${width}mm` });
    return [
      h('table', { className: ['debrief'], id }, [
        h('caption', [captionNumber('Table'), ' Planned against flown. Heights are above the spot.']),
        h('thead', [
          h('tr', [
            h('th', col, 'At'),
            h('th', { ...col, className: ['number'] }, 'Planned'),
            h('th', col, 'Where planned'),
            h('th', room(22), 'Flown'),
            h('th', room(58), 'What was seen, and done'),
          ]),
        ]),
        h(
          'tbody',
          plan.keys.filter(({ id }) => id !== 'aim-point').map((key) => keyRow(key, units)),
        ),
      ]),
      h('p', { className: ['source'] }, sourceWords(plan, units)),
      h('table', { className: ['debrief-grades'], id: `${id}-grades` }, [
        h('caption', [captionNumber('Table'), ' Completion standards: tick one on each line.']),
        h('thead', [
          h('tr', [
            h('th', col, 'Standard'),
            ...school.grading.map((grade) => h('th', { ...col, align: 'center' }, grade)),
          ]),
        ]),
        h(
          'tbody',
          { className: ['grades'] },
          generalLines.map((line) => gradeRow([{ type: 'text', value: line }], school.grading)),
        ),
      ]),
      h(
        'p',
        { className: ['debrief-signed'], style: 'margin-top:7mm' },
        ['Date', 'Student', 'Instructor'].flatMap((who) => [`${who} `, line(), ' ']),
      ),
    ];
  },
});

function line(): Element {
  return h('span', { style: 'display:inline-block;width:26mm;border-bottom:.4pt solid #000' });
}

function keyRow(key: KeyPosition, units: PageUnits): Element {
  const empty = () => h('td', { className: ['to-fill'], style: 'height:9mm;border-left:.25pt solid #000' });
  return h('tr', [
    h('th', { scope: 'row' }, key.label),
    h('td', { className: ['number'] }, formatHeight(key.height, units)),
    h('td', placeWords(key, units)),
    empty(),
    empty(),
  ]);
}
