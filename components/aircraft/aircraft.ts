import { z } from 'zod';
import type { Aircraft, BestGlide } from '../../src/flight/aircraft.ts';
import { indicatedSpeed } from '../../src/flight/calibration.ts';
import type { Plan } from '../../src/flight/plan.ts';
import { loadFactor, stallSpeedUnder } from '../../src/flight/turns.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import {
  formatAngle,
  formatDistance,
  formatLowHeight,
  formatMass,
  formatRatio,
  formatSpeed,
} from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
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
    // Speeds go with the root of the mass: FAA-H-8083-25, Aerodynamics of Flight, effect of weight on stalling speed.
    const today = speed * Math.sqrt(flown.mass / aircraft.mass.reference);
    return formatSpeed(indicatedSpeed(today, aircraft), units);
  },
  'steep-ratio': ({ aircraft }) => formatRatio(steepOf(aircraft).ratio),
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
  'landing-roll': ({ aircraft }, units) => formatDistance(aircraft.landingRoll, units),
  'wind-limit': ({ aircraft }, units) => formatSpeed(aircraft.limits.wind, units),
  'crosswind-limit': ({ aircraft }, units) => formatSpeed(aircraft.limits.crosswind, units),
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
  approach: 'speed on final',
  touchdown: 'speed as the wheels touch',
  stall: 'stall speed, wings level',
  power: 'the engine: idling or stopped',
  bank: 'bank of the turns as planned',
  'stall-in-turn': 'stall speed in that bank, level turn',
  'round-out-height': 'height of the wheels where the round-out begins',
  mass: 'mass as flown',
  'landing-roll': 'from touchdown to the stop',
  'wind-limit': 'strongest wind it is flown in',
  'crosswind-limit': 'strongest wind across the runway it is landed in',
};

export const aircraft = defineComponent<PacketContext, z.ZodType>({
  name: 'aircraft',
  form: 'text',
  summary: 'A figure of the aircraft as flown today; speeds are what its indicator shows.',
  attributes: z.strictObject({}),
  label: nameOf(figures, meanings),
  example: ':aircraft[best-glide]',
  render: ({ label, context: { plan, units } }) => [
    { type: 'text', value: figures[label]?.(plan, units) ?? '' },
  ],
});
