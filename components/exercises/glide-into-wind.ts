import { airspeedFactor } from '../../src/flight/air.ts';
import { indicatedSpeed } from '../../src/flight/calibration.ts';
import { polarAtMass } from '../../src/flight/glide.ts';
import { groundRatio } from '../../src/flight/speed-to-fly.ts';
import { metresPerFoot, metresPerSecondPerKnot } from '../../src/units/factors.ts';
import { formatDistance, formatHeight, formatRatio, formatSpeed } from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { numberText, withUnit } from '../../src/units/rounding.ts';
import { comesOutByHand } from './by-hand.ts';
import { drawHeight, drawSpeed } from './draw-figures.ts';
import { shuffledChoices } from './exercise.ts';
import { wrongFigures } from './figure-choices.ts';
import type { Draw } from './question-setting.ts';

/** m. */
const heights = [500 * metresPerFoot, 2000 * metresPerFoot] as const;
/** m/s. */
const winds = [5 * metresPerSecondPerKnot, 15 * metresPerSecondPerKnot] as const;
/** m. */
const gap = 60;

/** How far the glide goes over the ground, straight into a wind that is the same all the way down. */
export const glideIntoWind: Draw = ({ plan, units }, random) => {
  const { aircraft, flown, power } = plan;
  const height = drawHeight(...heights, units, random, 10);
  const wind = drawSpeed(winds[0], Math.min(winds[1], aircraft.limits.wind), units, random);
  if (height === undefined || wind === undefined) return undefined;
  const polar = { speed: flown.glideSpeed, ratio: flown.glideRatio };
  const factor = airspeedFactor(plan.air)(height / 2);
  const over = (eas: number, headwind: number, with_ = polar) => groundRatio(with_, eas, headwind, factor);
  const ratio = over(polar.speed, wind);
  // Where the wind leaves less than a third of the glide, nobody should wait for the answer.
  if (ratio < flown.glideRatio / 3) return undefined;
  const other = polarAtMass(aircraft, power === 'idle' ? 'stopped' : 'idle', flown.mass);
  const [speed, approachSpeed] = [polar.speed, flown.approachSpeed];
  const shown = (eas: number) => formatSpeed(indicatedSpeed(eas, aircraft), units);
  const distance = (metres: number) => formatDistance(metres, units);
  const factors = [inDistanceUnit(height, units), numberText(ratio, 0.01)];
  if (!comesOutByHand(factors, distance(height * ratio), units.distance === 'ft' ? 50 : 10)) return undefined;
  const engine = power === 'idle' ? 'idling' : 'stopped';
  return shuffledChoices(
    {
      question:
        `From ${formatHeight(height, units)} above the field you glide straight, at ${shown(speed)} indicated, engine ${engine}, ` +
        `into a wind of ${formatSpeed(wind, units)} that is the same all the way down. How far over the ground does the glide go? ` +
        `(To the nearest ${units.distance === 'ft' ? '50 ft' : '10 m'}.)`,
      right: distance(height * ratio),
      wrong: wrongFigures(
        height * ratio,
        [
          { value: height * flown.glideRatio, fault: 'the wind forgotten: the glide of still air' },
          { value: height * over(speed, -wind), fault: 'the wind taken from behind' },
          {
            value: other && height * over(other.speed, wind, other),
            fault: `the glide with the engine ${power === 'idle' ? 'stopped' : 'idling'}`,
          },
          {
            value: height * over(approachSpeed, wind),
            fault: `flown at the approach speed, ${shown(approachSpeed)}`,
          },
          { value: height * over(speed, 2 * wind), fault: 'the wind taken off twice' },
        ],
        gap,
        distance,
      ),
      working: [
        `In still air, ${formatRatio(flown.glideRatio)}: ${formatHeight(height, units)} give ${distance(height * flown.glideRatio)}.`,
        `Halfway down the true airspeed is ${formatSpeed(speed * factor, units)}; forward, the wind takes ` +
          `${formatSpeed(wind, units)} of it, and the sink stays.`,
        `Over the ground that leaves ${numberText(ratio, 0.01)}:1. ${inDistanceUnit(height, units)} × ${numberText(ratio, 0.01)}:`,
      ],
    },
    random,
  );
};

/** A height to 1 m or 1 ft of the unit that distances are printed in, for a product that comes out as printed. */
function inDistanceUnit(metres: number, { distance }: PageUnits): string {
  return distance === 'ft' ? withUnit(metres / metresPerFoot, 1, 'ft') : withUnit(metres, 1, 'm');
}
