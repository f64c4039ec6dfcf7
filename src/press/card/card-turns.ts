import type { Element } from 'hast';
import { h } from 'hastscript';
import { indicatedSpeed } from '../../flight/aircraft/calibration.ts';
import { turnFigures } from '../../flight/questions/turn-figures.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { formatHeight, formatSpeed } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';

const angles = [90, 180, 360];

/** What a turn at the planned bank costs, and where it stalls, in one row. */
export function cardTurns(plan: Plan, units: PageUnits): Element {
  const { bank } = plan.flown;
  const turns = angles.map((degrees) => turnFigures(plan, bank, (degrees * Math.PI) / 180));
  const { stallSpeed } = turns[0]!;
  const cells: readonly (readonly [string, string])[] = [
    ...turns.map(({ flown }, i): readonly [string, string] => [
      `${angles[i]}°`,
      flown ? formatHeight(flown.heightLost, units) : 'stalls',
    ]),
    ['stall', formatSpeed(indicatedSpeed(stallSpeed, plan.aircraft), units)],
  ];
  return h('section', { class: 'turns', ariaLabelledBy: 'turns' }, [
    h('table', { ariaLabelledBy: 'turns' }, [
      h('tbody', [
        h('tr', [
          h('th', { scope: 'row' }, [h('h2', { id: 'turns' }, `Turn at ${formatAngle(bank)}, still air`)]),
          ...cells.map(([name, value]) => h('td', { class: 'number' }, [`${name} `, h('b', value)])),
        ]),
      ]),
    ]),
  ]);
}
