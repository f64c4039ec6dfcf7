import { z } from 'zod';
import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { type FlownTurn, type TurnFigures, turnFigures } from '../../src/flight/questions/turn-figures.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { quantity } from '../../src/school/fields.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { numberText } from '../../src/units/rounding.ts';
import { anglesApart } from '../../src/words/figures/apart.ts';
import { formatDistance, formatHeight, formatSpeed, formatTime } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';

interface Turn {
  readonly plan: Plan;
  /** rad. */
  readonly bank: number;
  readonly figures: TurnFigures;
}

type Figure = (turn: Turn, units: PageUnits) => string;

const figures: Readonly<Record<string, Figure>> = {
  radius: (turn, units) => formatDistance(flownTurn(turn, units).radius, units),
  'load-factor': ({ figures: { loadFactor } }) => numberText(loadFactor, 0.01),
  stall: ({ plan, figures: { stallSpeed } }, units) =>
    formatSpeed(indicatedSpeed(stallSpeed, plan.aircraft), units),
  'height-lost': (turn, units) => formatHeight(flownTurn(turn, units).heightLost, units),
  time: (turn, units) => formatTime(flownTurn(turn, units).time),
};

function flownTurn({ plan, bank, figures: { flown, stallSpeed } }: Turn, units: PageUnits): FlownTurn {
  if (flown) return flown;
  const { aircraft } = plan;
  const stall = formatSpeed(indicatedSpeed(stallSpeed, aircraft), units);
  const glide = formatSpeed(indicatedSpeed(plan.flown.glideSpeed, aircraft), units);
  throw new DirectiveError(
    `${aircraft.name} stalls at ${stall} in a bank of ${formatAngle(bank)}, and glides at ${glide}: write a smaller \`bank\``,
  );
}

const attributes = z.strictObject({
  bank: quantity('angle', '1 deg', '75 deg', '30 deg')
    .describe('Bank of the turn; left out, the planned one')
    .optional(),
  angle: quantity('angle', '1 deg', '1080 deg', '180 deg')
    .describe('How far round it goes, for `height-lost` and `time`; left out, 360 deg')
    .optional(),
});

const meanings = {
  radius: 'radius of the circle',
  'load-factor': 'load factor in that bank',
  stall: 'stall speed in that bank',
  'height-lost': 'height lost in the turn',
  time: 'time the turn takes',
};

export const turn = defineComponent<PacketContext, typeof attributes>({
  name: 'turn',
  form: 'text',
  onScreen: 'made-again',
  summary:
    'What a gliding turn takes at the best-glide speed, at pattern height, in still air, its bank held throughout.',
  attributes,
  label: nameOf(figures, meanings),
  example: ':turn[height-lost]{bank=30deg angle=180deg}',
  render: ({ label, attributes: { bank, angle }, context: { plan, units } }) => {
    const { limit } = plan.aircraft.turns;
    const banked = bank ?? plan.flown.bank;
    if (banked > limit + 1e-9) {
      const said = anglesApart({ value: banked, limit }, 'most');
      throw new DirectiveError(
        `${plan.aircraft.name} may be banked ${said.limit} at most, not ${said.value}: write a smaller \`bank\``,
      );
    }
    if (angle !== undefined && label !== 'height-lost' && label !== 'time') {
      throw new DirectiveError(
        `The ${label} of a turn does not depend on how far it goes: leave \`angle\` out, or ask for \`height-lost\` or \`time\``,
      );
    }
    const found = turnFigures(plan, banked, angle ?? 2 * Math.PI);
    return [{ type: 'text', value: figures[label]!({ plan, bank: banked, figures: found }, units) }];
  },
});
