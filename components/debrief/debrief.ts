import type { Element, Properties } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import type { Caution } from '../../src/flight/terms/caution.ts';
import type { KeyPosition, Plan } from '../../src/flight/terms/plan.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { parsed } from '../../src/school/fields.ts';
import { wordsForm } from '../../src/school/written-form.ts';
import { sourceWords } from '../../src/words/approaches/approach-words.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { placeWords } from '../../src/words/keys/place-words.ts';
import type { PacketContext } from '../context.ts';
import { gradeRow } from './grade-row.ts';
import { gradeStandards } from './grade-standards.ts';

/** Graded where the lesson has no standards of its own. */
const generalLines = [
  'Looks out, and says what is going to be done before it is done.',
  'Holds the speed.',
  'Flies the turns with the bank planned, and no steeper to save one.',
  'Calls each key, and says high, low or good.',
  'Puts an error right where it is first seen, or breaks off in good time.',
  'Rounds out, holds off and lands under control.',
];

const example = 'Glide into the wind; glide down the wind';

const attributes = z.strictObject({
  rows: parsed(example, (text) => text.split(';').flatMap((row) => row.trim() || []), wordsForm)
    .describe('What was flown, for a lesson that flies no keys: one row each, with `;` between them')
    .optional(),
});

export const debrief = defineComponent<PacketContext, typeof attributes>({
  name: 'debrief',
  form: 'leaf',
  summary:
    "A form for after the flight: planned against flown at each key, and the lesson's standards graded in the school's own words.",
  attributes,
  example: '::debrief',
  render: ({ attributes: { rows }, ordinal, context: { plan, school, units } }) => {
    const id = `debrief-${ordinal}`;
    const table = { className: ['debrief'], id };
    // One sheet, to be filled in after the flight.
    const form = h('section', { className: ['debrief-form'], ariaLabel: 'Debrief form' }, [
      ...(rows ? [ownTable(table, rows)] : [keyTable(table, plan, units)]),
      ...(rows ? [] : [h('p', { className: ['source'] }, sourceWords(plan, units))]),
      h('table', { className: ['debrief-grades'], id: `${id}-grades` }, [
        h('caption', [captionNumber('Table'), ' Completion standards: tick one on each line.']),
        h('thead', [
          h('tr', [
            h('th', col, 'Standard'),
            ...school.grading.map((grade) => h('th', { ...room(15), align: 'center' }, grade)),
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
        { className: ['debrief-signed'], style: 'display:flex;gap:2mm;margin-top:7mm' },
        ['Date', 'Student', 'Instructor'].flatMap((who) => [`${who} `, line(), ' ']),
      ),
    ]);
    return [form];
  },
  finish: gradeStandards,
});

const col = { scope: 'col' };
const room = (width: number) => ({ ...col, style: `width:${width}mm` });

function line(): Element {
  return h('span', { style: 'flex:1;border-bottom:.4pt solid #000' });
}

function empty(): Element {
  return h('td', { className: ['to-fill'], style: 'height:9mm;border-left:.25pt solid #000' });
}

function keyTable(table: Properties, plan: Plan, units: PageUnits): Element {
  const keys = plan.keys.filter(({ id }) => id !== 'aim-point');
  return h('table', table, [
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
      keys.map((key) => keyRow(key, plan.cautions, units)),
    ),
  ]);
}

/** What the student thought beforehand, since there is no plan to compare the flight with. */
function ownTable(table: Properties, rows: readonly string[]): Element {
  return h('table', { ...table, style: 'width:100%' }, [
    h('caption', [captionNumber('Table'), ' Expected against flown.']),
    h('thead', [
      h('tr', [
        h('th', room(48), 'What was flown'),
        h('th', col, 'Expected'),
        h('th', col, 'Flown'),
        h('th', room(58), 'What was seen, and done'),
      ]),
    ]),
    h(
      'tbody',
      rows.map((row) => h('tr', [h('th', { scope: 'row' }, row), empty(), empty(), empty()])),
    ),
  ]);
}

function keyRow(key: KeyPosition, cautions: readonly Caution[], units: PageUnits): Element {
  return h('tr', [
    h('th', { scope: 'row' }, keyNames[key.id]),
    h('td', { className: ['number'] }, formatKeyHeight(key, cautions, units)),
    h('td', placeWords(key, units)),
    empty(),
    empty(),
  ]);
}
