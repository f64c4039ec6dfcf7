import type { Element } from 'hast';
import { h } from 'hastscript';
import { notSound } from '../../../components/kneeboard/by-wind.ts';
import type { Plan, PlanRequest } from '../../flight/plan.ts';
import { formatSpeed } from '../../units/format.ts';
import type { PageUnits } from '../../units/page-units.ts';
import { partsOf } from './card-figure.ts';
import { type WindColumn, windColumns } from './wind-columns.ts';

/** What the wind along the runway changes most: when to turn base, and how high the base key then is. */
export function cardWinds(plan: Plan, request: PlanRequest, units: PageUnits): Element {
  const columns = windColumns(request, plan.aircraft, units);
  const onBase = plan.approach === '90';
  const { wind, crosswind } = plan.aircraft.limits;
  const unsound = columns.some(({ baseTurn, baseKey }) => baseTurn === notSound || baseKey === notSound);
  return h('section', { class: 'winds', ariaLabelledBy: 'winds' }, [
    h('table', { ariaLabelledBy: 'winds' }, [
      h('thead', [
        h('tr', [
          h('th', { scope: 'col' }, [h('h2', { id: 'winds' }, `Headwind on final, ${units.speed}`)]),
          ...columns.map(({ headwind }) =>
            h('th', { scope: 'col', class: 'number' }, partsOf(headwind).number),
          ),
        ]),
      ]),
      h('tbody', [
        ...(onBase ? [] : [row('Base turn, s after abeam', columns, ({ baseTurn }) => baseTurn!)]),
        row(`${onBase ? 'Throttle closed' : 'Base key'}, ${units.height}`, columns, ({ baseKey }) => baseKey),
      ]),
    ]),
    h('p', { class: 'words' }, [
      h('b', `Not above ${formatSpeed(wind, units)}, ${formatSpeed(crosswind, units)} across.`),
      unsound ? ` ${unsoundMark} ${notSound} in that wind as planned.` : '',
    ]),
  ]);
}

/** In a narrow column, for `notSound`. */
const unsoundMark = '✕';

function row(
  name: string,
  columns: readonly WindColumn[],
  figureOf: (column: WindColumn) => string,
): Element {
  return h('tr', [
    h('th', { scope: 'row' }, name),
    ...columns.map((column) => {
      const text = figureOf(column);
      return h('td', { class: 'number' }, [
        text === notSound ? h('abbr', { title: notSound }, unsoundMark) : h('b', partsOf(text).number),
      ]);
    }),
  ]);
}
