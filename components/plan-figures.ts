import { indicatedSpeed } from '../src/flight/aircraft/calibration.ts';
import { loadFactor, stallSpeedUnder } from '../src/flight/aircraft/turns.ts';
import { groundFigures } from '../src/flight/questions/ground.ts';
import type { Gate, Plan } from '../src/flight/terms/plan.ts';
import type { KnownFigure } from '../src/lesson/check-typed-figures.ts';
import { metresPerFoot } from '../src/units/factors.ts';
import { roundDownTo, roundTo, roundUpTo } from '../src/units/rounding.ts';
import { distanceStep, heightStep, speedStep } from '../src/words/figures/format.ts';
import type { PageUnits } from '../src/words/figures/page-units.ts';
import { roundMostSpeed } from '../src/words/figures/safe-rounding.ts';
import { gateBand } from '../src/words/gates/gate-band.ts';

/** The heights, distances and speeds of a flight that a directive in a sentence prints. */
export function planFigures(plan: Plan, units: PageUnits): KnownFigure[] {
  return [...heights(plan, units), ...distances(plan, units), ...speeds(plan, units)];
}

function heights({ keys, gates, aircraft, air }: Plan, units: PageUnits): KnownFigure[] {
  const step = heightStep(units);
  const height = (value: number, directive: string, printed: number = roundTo(value, step)): KnownFigure => ({
    kind: 'height',
    value,
    step,
    printed,
    directive,
  });
  // An edge at the plan prints the plan's own height, which is already among these.
  const edges = (gate: Gate) => {
    const band = gateBand(gate, units);
    if (band.none !== undefined) return [];
    return (['low', 'high'] as const).flatMap((edge) => {
      const [value, printed] = [gate[edge], band[edge]];
      if (value === null || typeof printed !== 'number') return [];
      return [height(value, `:gate[${gate.at}]{edge=${edge}}`, printed)];
    });
  };
  // Printed to the foot, like the wheel heights that it goes with.
  const fine = units.height === 'ft' ? metresPerFoot : 0.1;
  const roundOut = aircraft.roundOut.height;
  return [
    ...keys
      .filter(({ id }) => id !== 'aim-point' && id !== 'touchdown')
      .map((key) => height(key.height, `:key[${key.id}]{show=height}`)),
    ...gates.flatMap(edges),
    height(air.elevation, ':air[elevation]'),
    { ...height(roundOut, ':aircraft[round-out-height]', roundTo(roundOut, fine)), step: fine },
  ];
}

function distances(plan: Plan, units: PageUnits): KnownFigure[] {
  const step = distanceStep(units);
  const { roll, overScreen, leftAtStop } = groundFigures(plan);
  const ofKeys = plan.keys.map(({ id, along, across }): readonly [number, string] => {
    if (id === 'base-turn') return [-along, ':key[base-turn]{show=past-abeam}'];
    if (id === 'downwind-key') return [Math.abs(across), ':key[downwind-key]{show=across}'];
    return [Math.hypot(along, across), `:key[${id}]{show=distance}`];
  });
  const distance = (
    value: number,
    directive: string,
    printed: number = roundTo(value, step),
  ): KnownFigure => ({
    kind: 'distance',
    value,
    step,
    printed,
    directive,
  });
  return [
    ...ofKeys.map(([value, directive]) => distance(value, directive)),
    distance(roll, ':ground[roll]', roundUpTo(roll, step)),
    ...(overScreen === undefined
      ? []
      : [distance(overScreen, ':ground[over-50-ft]', roundUpTo(overScreen, step))]),
    distance(leftAtStop, ':ground[left]', roundDownTo(leftAtStop, step)),
  ];
}

function speeds({ aircraft, flown }: Plan, units: PageUnits): KnownFigure[] {
  const shown = (equivalent: number) => indicatedSpeed(equivalent, aircraft);
  const all: readonly (readonly [number, string])[] = [
    [shown(flown.glideSpeed), ':aircraft[best-glide]'],
    [shown(flown.approachSpeed), ':aircraft[approach]'],
    [shown(flown.touchdownSpeed), ':aircraft[touchdown]'],
    [shown(flown.stallSpeed), ':aircraft[stall]'],
    [shown(stallSpeedUnder(loadFactor(flown.bank), flown.stallSpeed)), ':aircraft[stall-in-turn]'],
    [flown.surfaceWind.speed, ':wind[speed]'],
  ];
  const limits: readonly (readonly [number, string])[] = [
    [aircraft.limits.wind, ':aircraft[wind-limit]'],
    [aircraft.limits.crosswind, ':aircraft[crosswind-limit]'],
  ];
  const step = speedStep(units);
  const speed = (value: number, directive: string, printed: number): KnownFigure => ({
    kind: 'speed',
    value,
    step,
    printed,
    directive,
  });
  return [
    ...all.map(([value, directive]) => speed(value, directive, roundTo(value, step))),
    ...limits.map(([value, directive]) => speed(value, directive, roundMostSpeed(value, units))),
  ];
}
