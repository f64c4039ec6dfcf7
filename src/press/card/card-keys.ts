import type { Element } from 'hast';
import { h } from 'hastscript';
import { alongWords } from '../../../components/place-words.ts';
import { noBandText } from '../../drawing/gate-band.ts';
import type { Plan } from '../../flight/plan.ts';
import { formatDistance, formatHeight } from '../../units/format.ts';
import type { PageUnits } from '../../units/page-units.ts';
import { figure } from './card-figure.ts';
import { type KeyRow, keyRows } from './key-rows.ts';

/** Where to be how high, from where the spot is still made, and when. */
export function cardKeys(plan: Plan, units: PageUnits): Element {
  const head = (text: string) => h('th', { scope: 'col', class: 'number' }, text);
  return h('section', { class: 'keys', ariaLabelledBy: 'keys' }, [
    h('table', { ariaLabelledBy: 'keys' }, [
      h('thead', [
        h('tr', [
          h('th', { scope: 'col' }, [h('h2', { id: 'keys' }, 'Above the spot')]),
          head('Height'),
          head('Lowest'),
          head('Highest'),
          head('Time'),
        ]),
      ]),
      h(
        'tbody',
        keyRows(plan, units).map((key) => row(key, turnWords(plan, units))),
      ),
    ]),
    h('p', { class: 'words' }, wordsUnder(plan, units)),
  ]);
}

/** The base turn has no gate, and its place stands there instead. */
function row({ id, label, height, band, time }: KeyRow, turn: string | undefined): Element {
  const wide = (text: string) => [h('td', { class: 'number', colSpan: 2 }, text)];
  const cells =
    band === undefined
      ? wide(id === 'base-turn' && turn !== undefined ? turn : '')
      : band === 'none'
        ? wide(noBandText)
        : [band.low, band.high].map((edge) => h('td', { class: 'number' }, edge));
  return h('tr', [
    h('th', { scope: 'row' }, label),
    h('td', { class: 'number key-height' }, [figure(height)]),
    ...cells,
    h('td', { class: 'number' }, time),
  ]);
}

/** The aircraft flies away from the spot there: `550 m past abeam`. */
function turnWords({ keys }: Plan, units: PageUnits): string | undefined {
  const turn = keys.find(({ id }) => id === 'base-turn');
  if (turn === undefined) return undefined;
  const far = formatDistance(Math.abs(turn.along), units);
  if (far === formatDistance(0, units)) return 'abeam';
  return `${far} ${turn.along < 0 ? 'past' : 'before'} abeam`;
}

function wordsUnder({ airfield: { elevation }, keys }: Plan, units: PageUnits): string {
  const add = formatHeight(Math.abs(elevation), units);
  const aim = keys.find(({ id }) => id === 'aim-point');
  const altitude =
    add === formatHeight(0, units) ? 'QNH: the same.' : `QNH: ${elevation < 0 ? 'take off' : 'add'} ${add}.`;
  return [altitude, ...(aim === undefined ? [] : [`Aim point ${alongWords(aim, units)}.`])].join(' ');
}
