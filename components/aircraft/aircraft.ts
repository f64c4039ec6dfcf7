import { z } from 'zod';
import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { loadFactor, stallSpeedUnder } from '../../src/flight/aircraft/turns.ts';
import type { Aircraft, BestGlide } from '../../src/flight/terms/aircraft.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { formatLowHeight, formatMass, formatRatio, formatSpeed } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatMostSpeed, formatSafeDistance } from '../../src/words/figures/safe-rounding.ts';
import { nameOf } from '../choice-of.ts';
import type { PacketContext } from '../context.ts';

type Figure = (plan: Plan, units: PageUnits) => string;

/** Speeds are what the indicator shows at the mass of the day, with the power setting of the plan. */
const figures: Readonly<Record<string, Figure>> = {
  name: ({ aircraft }) => aircraft.name,
  'best-glide': ({ aircraft, flown }, units) =>
    formatSpeed(indicatedSpeed(flown.glideSpeed, aircraft), units),
  'glide-ratio': ({ flown }) => formatRatio(flown.glideRatio),
  'steep-approach': ({ aircraft, flown }, units) => {
    const { speed } = steepOf(aircraft);
    // Speeds go with the square root of the mass: FAA-H-8083-25, Aerodynamics of Flight, effect of weight on stalling
    // speed.
    const today = speed * Math.sqrt(flown.mass / aircraft.mass.reference);
    return formatSpeed(indicatedSpeed(today, aircraft), units);
  },
  'steep-ratio': ({ aircraft }) => formatRatio(steepOf(aircraft).ratio),
  'approach-flap': ({ aircraft }) => aircraft.flap?.approach ?? 'where the handbook has it',
  approach: ({ aircraft, flown }, units) => formatSpeed(indicatedSpeed(flown.approachSpeed, aircraft), units),
  touchdown: ({ aircraft, flown }, units) =>
    formatSpeed(indicatedSpeed(flown.touchdownSpeed, aircraft), units),
  stall: ({ aircraft, flown }, units) => formatSpeed(indicatedSpeed(flown.stallSpeed, aircraft), units),
  power: ({ power }) => (power === 'idle' ? 'idling' : 'stopped'),
  bank: ({ flown }) => formatAngle(flown.bank),
  // In the planned bank, level turn: FAA-H-8083-25, Aerodynamics of Flight, load factors in steep turns.
  'stall-in-turn': ({ aircraft, flown }, units) =>
    formatSpeed(indicatedSpeed(stallSpeedUnder(loadFactor(flown.bank), flown.stallSpeed), aircraft), units),
  'round-out-height': ({ aircraft }, units) => formatLowHeight(aircraft.roundOut.height, units),
  mass: ({ flown }) => formatMass(flown.mass),
  'landing-roll': ({ aircraft }, units) => formatSafeDistance(aircraft.landingRoll, 'up', units),
  'wind-limit': ({ aircraft }, units) => formatMostSpeed(aircraft.limits.wind, units),
  'crosswind-limit': ({ aircraft }, units) => formatMostSpeed(aircraft.limits.crosswind, units),
  'tailwind-limit': ({ aircraft: { name, limits } }, units) => {
    if (limits.tailwind !== undefined) return formatMostSpeed(limits.tailwind, units);
    throw new DirectiveError(
      `${name} has no tailwind limit: write \`tailwind\` in \`limits\` of its file, or take this figure out`,
    );
  },
};

function steepOf({ name, steepApproach }: Aircraft): BestGlide {
  if (steepApproach) return steepApproach;
  throw new DirectiveError(
    `${name} has no steep approach: write \`steep-approach\` in its file, or take this figure out`,
  );
}

const meanings = {
  name: 'what it is called',
  'best-glide': 'best-glide speed',
  'glide-ratio': 'distance flown for one of height lost, at that speed',
  'steep-approach': 'speed of the steep approach',
  'steep-ratio': 'distance flown for one of height lost, at that speed',
  'approach-flap': 'where the flap stands at that speed, in the words of its data',
  approach: 'speed on final',
  touchdown: 'speed as the wheels touch',
  stall: 'stall speed, wings level',
  power: 'the engine: idling or stopped',
  bank: 'bank of the turns as planned',
  'stall-in-turn': 'stall speed in that bank, level turn',
  'round-out-height': 'height of the wheels where the round-out begins',
  mass: 'mass as flown',
  'landing-roll':
    'from touchdown to the stop, as its data give it: for a calm, standard air and the reference mass',
  'wind-limit': 'strongest wind it is flown in',
  'crosswind-limit': 'strongest wind across the runway it is landed in',
  'tailwind-limit': 'strongest wind from behind it is landed in, where its data give one',
};

export const aircraft = defineComponent<PacketContext, z.ZodType>({
  name: 'aircraft',
  form: 'text',
  onScreen: 'made-again',
  summary: 'A figure of the aircraft as flown today; speeds are what its indicator shows.',
  attributes: z.strictObject({}),
  label: nameOf(figures, meanings),
  example: ':aircraft[best-glide]',
  render: ({ label, context: { plan, units } }) => [
    { type: 'text', value: figures[label]?.(plan, units) ?? '' },
  ],
});
