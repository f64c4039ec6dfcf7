import type { Element } from 'hast';
import { h } from 'hastscript';
import { type KeyTableDress, type KeyTablePart, keysTable } from '../../../components/keys-table.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { placeLine } from '../../words/card/card-words.ts';
import { formatHeight } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { figure } from './card-figure.ts';

/**
 * Where to be, how high, between which heights the spot is still made, and when: for one flight, or with each engine
 * side by side.
 */
export function cardKeys(plans: readonly Plan[], units: PageUnits): Element {
  const head = h('h2', { id: 'keys' }, `Above the spot, ${units.height}`);
  return h('section', { class: 'keys', ariaLabelledBy: 'keys' }, [
    keysTable(plans, units, dress, { head, label: { ariaLabelledBy: ['keys'] } }),
    h(
      'p',
      { class: 'words' },
      [placeLine(plans, units), altitudeWords(plans[0]!, units)].filter(Boolean).join(' '),
    ),
  ]);
}

const dress: KeyTableDress = {
  of: (part, opens) => ({ className: [...classes[part], ...(opens ? ['opens'] : [])] }),
  height: (number) => [figure(number)],
  mark: (label) => h('span', { className: ['mark'], role: 'img', ariaLabel: label }),
};

const classes: Readonly<Record<KeyTablePart, readonly string[]>> = {
  group: ['group'],
  head: ['number'],
  key: ['key'],
  height: ['number', 'key-height'],
  figure: ['number'],
};

function altitudeWords({ airfield: { elevation } }: Plan, units: PageUnits): string {
  const add = formatHeight(Math.abs(elevation), units);
  if (add === formatHeight(0, units)) return 'QNH: the same.';
  return `QNH: ${elevation < 0 ? 'take off' : 'add'} ${add}.`;
}
