import { indicatedSpeed } from '../src/flight/calibration.ts';
import { groundFigures } from '../src/flight/ground.ts';
import type { Plan } from '../src/flight/plan.ts';
import { loadFactor, stallSpeedUnder } from '../src/flight/turns.ts';
import type { KnownFigure } from '../src/lesson/check-typed-figures.ts';
import {
  metresPerFoot,
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  metresPerSecondPerMph,
} from '../src/units/factors.ts';
import type { PageUnits } from '../src/units/page-units.ts';

const speedSteps = {
  kt: metresPerSecondPerKnot,
  'km/h': metresPerSecondPerKmh,
  mph: metresPerSecondPerMph,
};

/** The heights, distances and speeds of a flight that a directive in a sentence prints. */
export function planFigures(plan: Plan, units: PageUnits): KnownFigure[] {
  return [...heights(plan, units), ...distances(plan, units), ...speeds(plan, units)];
}

function heights({ keys, gates, aircraft, air }: Plan, units: PageUnits): KnownFigure[] {
  const step = units.height === 'ft' ? 10 * metresPerFoot : 5;
  const height = (value: number, directive: string): KnownFigure => ({
    kind: 'height',
    value,
    step,
    directive,
  });
  return [
    ...keys
      .filter(({ id }) => id !== 'aim-point' && id !== 'touchdown')
      .map((key) => height(key.height, `:key[${key.id}]{show=height}`)),
    ...gates.flatMap(({ at, low, high }) => [
      ...(low === null ? [] : [height(low, `:gate[${at}]{edge=low}`)]),
      ...(high === null ? [] : [height(high, `:gate[${at}]{edge=high}`)]),
    ]),
    height(air.elevation, ':air[elevation]'),
    // Printed to the foot, as the wheel heights that it belongs to are.
    {
      ...height(aircraft.roundOut.height, ':aircraft[round-out-height]'),
      step: units.height === 'ft' ? metresPerFoot : 0.1,
    },
  ];
}

function distances(plan: Plan, units: PageUnits): KnownFigure[] {
  const step = units.distance === 'ft' ? 50 * metresPerFoot : 10;
  const { overScreen, leftAtStop } = groundFigures(plan);
  const ofKeys = plan.keys.map(({ id, along, across }): readonly [number, string] => {
    if (id === 'base-turn') return [-along, ':key[base-turn]{show=past-abeam}'];
    if (id === 'downwind-key') return [Math.abs(across), ':key[downwind-key]{show=across}'];
    return [Math.hypot(along, across), `:key[${id}]{show=distance}`];
  });
  const all: readonly (readonly [number, string])[] = [
    ...ofKeys,
    [plan.aircraft.landingRoll, ':ground[roll]'],
    [overScreen ?? 0, ':ground[over-50-ft]'],
    [leftAtStop, ':ground[left]'],
  ];
  return all.map(([value, directive]) => ({ kind: 'distance', value, step, directive }));
}

function speeds({ aircraft, flown }: Plan, units: PageUnits): KnownFigure[] {
  const shown = (equivalent: number) => indicatedSpeed(equivalent, aircraft);
  const all: readonly (readonly [number, string])[] = [
    [shown(flown.glideSpeed), ':aircraft[best-glide]'],
    [shown(flown.approachSpeed), ':aircraft[approach]'],
    [shown(flown.touchdownSpeed), ':aircraft[touchdown]'],
    [shown(flown.stallSpeed), ':aircraft[stall]'],
    [shown(stallSpeedUnder(loadFactor(flown.bank), flown.stallSpeed)), ':aircraft[stall-in-turn]'],
    [aircraft.limits.wind, ':aircraft[wind-limit]'],
    [aircraft.limits.crosswind, ':aircraft[crosswind-limit]'],
    [flown.surfaceWind.speed, ':wind[speed]'],
  ];
  return all.map(([value, directive]) => ({
    kind: 'speed',
    value,
    step: speedSteps[units.speed],
    directive,
  }));
}
