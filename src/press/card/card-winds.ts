import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { byWind } from '../../words/card/by-wind.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatMostSpeed } from '../../words/figures/safe-rounding.ts';

/** What the wind along the runway changes most: when to turn base, and how high the base key then is. */
export function cardWinds(plan: Plan, request: PlanRequest, units: PageUnits): Element {
  const { head, winds, rows, notes } = byWind(plan, request, units);
  const { wind, crosswind, tailwind } = plan.aircraft.limits;
  const limits = [
    `Not above ${formatMostSpeed(wind, units)}`,
    `${formatMostSpeed(crosswind, units)} across`,
    ...(tailwind === undefined ? [] : [`${formatMostSpeed(tailwind, units)} behind`]),
  ];
  return h('section', { class: 'winds', ariaLabelledBy: 'winds' }, [
    h('table', { ariaLabelledBy: 'winds' }, [
      h('thead', [
        h('tr', [
          h('th', { scope: 'col' }, [
            h('h2', { id: 'winds' }, `${plan.power === 'idle' ? 'Idling' : 'Stopped'}: ${head}`),
          ]),
          ...winds.map((text) => h('th', { scope: 'col', class: 'number' }, text)),
        ]),
      ]),
      h(
        'tbody',
        rows.map(({ name, cells }) =>
          h('tr', [h('th', { scope: 'row' }, name), ...cells.map((text) => cell(text))]),
        ),
      ),
    ]),
    h('p', { class: 'words' }, [h('b', `${limits.join(', ')}.`), ` ${notes.join(' ')}`]),
  ]);
}

function cell(text: string): Element {
  const isNumber = /\d/.test(text);
  return h(
    'td',
    { class: 'number' },
    text === '' ? [] : [h('b', { class: isNumber ? 'big' : undefined }, text)],
  );
}
