import { z } from 'zod';
import { flownWindAt } from '../../src/flight/air/flown-wind.ts';
import { crosswind, headwind } from '../../src/flight/air/wind.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { defineComponent } from '../../src/lesson/component.ts';
import { formatDirection } from '../../src/units/angle-text.ts';
import { formatSpeed, formatWind } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { crosswindWords, headwindWords } from '../../src/words/winds/wind-words.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';
import { planKey } from '../plan-key.ts';

type Figure = (plan: Plan, units: PageUnits) => string;

/** Worded so that the sentence around it stays right when the wind changes sides. */
const figures: Readonly<Record<string, Figure>> = {
  surface: ({ flown }, units) => formatWind(flown.surfaceWind.from, flown.surfaceWind.speed, units),
  from: ({ flown }, units) => {
    const isCalm = formatSpeed(flown.surfaceWind.speed, units) === formatSpeed(0, units);
    return isCalm ? 'calm' : formatDirection(flown.surfaceWind.from);
  },
  speed: ({ flown }, units) => formatSpeed(flown.surfaceWind.speed, units),
  headwind: ({ flown, runway }, units) =>
    headwindWords(headwind(flown.surfaceWind, runway.heading), units, 'no headwind'),
  crosswind: ({ flown, runway }, units) =>
    crosswindWords(crosswind(flown.surfaceWind, runway.heading), units, 'no crosswind'),
  'at-key': (plan, units) => {
    const { from, speed } = flownWindAt(plan, planKey(plan, 'downwind-key').height);
    return formatWind(from, speed, units);
  },
};

const meanings = {
  surface: 'direction and speed at the surface',
  from: 'the direction it blows from',
  speed: 'its speed at the surface',
  headwind: 'what of it blows along the runway, as a headwind or a tailwind',
  crosswind: 'what of it blows across the runway, and from which side',
  'at-key': 'direction and speed at the height of the downwind key',
};

export const wind = defineComponent<PacketContext, z.ZodType>({
  name: 'wind',
  form: 'text',
  onScreen: 'made-again',
  summary: 'A figure of the wind that the packet is for.',
  attributes: z.strictObject({}),
  label: nameOf(figures, meanings),
  example: ':wind[crosswind]',
  render: ({ label, context: { plan, units } }) => [
    { type: 'text', value: figures[label]?.(plan, units) ?? '' },
  ],
});
