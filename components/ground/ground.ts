import { z } from 'zod';
import { type GroundFigures, groundFigures } from '../../src/flight/questions/ground.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatSafeDistance } from '../../src/words/figures/safe-rounding.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';
import { flownFigure } from '../grade-mark.ts';

type Figure = (ground: GroundFigures, plan: Plan, units: PageUnits) => string;

/** What is needed is rounded up, what is left is rounded down. */
const figures: Readonly<Record<string, Figure>> = {
  'over-50-ft': ({ overScreen }, { approach }, units) => {
    if (overScreen !== undefined) return formatSafeDistance(overScreen, 'up', units);
    throw new DirectiveError(`This ${approach} approach starts below 50 ft: there is no distance from there`);
  },
  roll: ({ roll }, _plan, units) => formatSafeDistance(roll, 'up', units),
  left: ({ leftAtStop }, _plan, units) => {
    if (leftAtStop >= 0) return formatSafeDistance(leftAtStop, 'down', units);
    return `nothing: the roll ends ${formatSafeDistance(-leftAtStop, 'up', units)} beyond the runway`;
  },
};

const meanings = {
  'over-50-ft': 'from 50 ft above the spot to the stop',
  roll: 'the landing roll in this wind and air, at this mass',
  left: 'the runway left beyond the stop',
};

export const ground = defineComponent<PacketContext, z.ZodType>({
  name: 'ground',
  form: 'text',
  onScreen: 'made-again',
  summary: 'What the landing takes of the ground; what is needed is rounded up, what is left down.',
  attributes: z.strictObject({}),
  label: nameOf(figures, meanings),
  example: ':ground[left]',
  render: ({ label, context: { plan, units } }) =>
    flownFigure(figures[label]!(groundFigures(plan), plan, units), plan),
});
