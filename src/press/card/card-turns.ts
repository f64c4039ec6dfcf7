import type { Element } from 'hast';
import { h } from 'hastscript';
import { turnFigures } from '../../../components/turn/turn-figures.ts';
import { indicatedSpeed } from '../../flight/calibration.ts';
import type { Plan } from '../../flight/plan.ts';
import { formatAngle, formatHeight, formatSpeed } from '../../units/format.ts';
import type { PageUnits } from '../../units/page-units.ts';
import { figure } from './card-figure.ts';

const angles = [90, 180, 360];

/** What a turn at the planned bank costs, and where it stalls. */
export function cardTurns(plan: Plan, units: PageUnits): Element {
  const { bank } = plan.flown;
  const turns = angles.map((degrees) => turnFigures(plan, bank, (degrees * Math.PI) / 180));
  const { stallSpeed } = turns[0]!;
  const columns: readonly (readonly [string, string])[] = [
    ...turns.map(({ flown }, i): readonly [string, string] => [
      `${angles[i]}°`,
      flown ? formatHeight(flown.heightLost, units) : 'stalls',
    ]),
    ['Stall in it', formatSpeed(indicatedSpeed(stallSpeed, plan.aircraft), units)],
  ];
  return h('section', { class: 'turns', ariaLabelledBy: 'turns' }, [
    h('table', { ariaLabelledBy: 'turns' }, [
      h('thead', [
        h('tr', [
          h('th', { scope: 'col' }, [h('h2', { id: 'turns' }, `Turn at ${formatAngle(bank)} of bank`)]),
          ...columns.map(([name]) => h('th', { scope: 'col', class: 'number' }, name)),
        ]),
      ]),
      h('tbody', [
        h('tr', [
          h('th', { scope: 'row' }, 'Height lost, still air'),
          ...columns.map(([, value]) => h('td', { class: 'number' }, [figure(value)])),
        ]),
      ]),
    ]),
  ]);
}
