import { airspeedFactor } from '../../src/flight/air/air.ts';
import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { polarAtMass, sinOfGlide } from '../../src/flight/aircraft/glide.ts';
import { groundRatio } from '../../src/flight/aircraft/speed-to-fly.ts';
import { metresPerFoot, metresPerSecondPerKnot } from '../../src/units/factors.ts';
import { numberText, withUnit } from '../../src/units/rounding.ts';
import {
  formatDistance,
  formatHeight,
  formatRatio,
  formatSpeed,
  speedStep,
} from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { comesOutByHand, numberIn, sumText } from './by-hand.ts';
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
  const height = drawHeight(heights, units, random, 10);
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
  // Worked out from finer figures than a page prints elsewhere: with the speed to 1 kt the distance would come out
  // different.
  const finely = (metresPerSecond: number) => withUnit(metresPerSecond / speedStep(units), 0.1, units.speed);
  const tas = polar.speed * factor;
  const sin = sinOfGlide(polar, polar.speed, 1);
  const forward = finely(tas * Math.sqrt(1 - sin * sin));
  const stillRatio = formatRatio(flown.glideRatio);
  const share = (taken: number) => (numberIn(forward) - taken) / numberIn(forward);
  const inWind = numberIn(formatSpeed(wind, units));
  const overGround = (taken: number) => numberText(numberIn(stillRatio) * share(taken), 0.01);
  const left = overGround(inWind);
  const factors = [inDistanceUnit(height, units), left];
  if (!comesOutByHand(factors, distance(height * ratio), units.distance === 'ft' ? 50 : 10)) return undefined;
  const byHand = (taken: number) => height * numberIn(stillRatio) * share(taken);
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
          { value: byHand(0), fault: 'the wind forgotten: the glide of still air' },
          { value: byHand(-inWind), fault: 'the wind taken from behind' },
          {
            value: other && height * over(other.speed, wind, other),
            fault: `the glide with the engine ${power === 'idle' ? 'stopped' : 'idling'}`,
          },
          {
            value: height * over(approachSpeed, wind),
            fault: `flown at the approach speed, ${shown(approachSpeed)}`,
          },
          { value: byHand(2 * inWind), fault: 'the wind taken off twice' },
        ],
        gap,
        distance,
      ),
      working: [
        `In still air, ${stillRatio}: ${formatHeight(height, units)} give ${distance(byHand(0))}.`,
        `Halfway down the true airspeed is ${finely(tas)}, ${forward} of it forward; the wind takes ` +
          `${formatSpeed(wind, units)} of that, and the sink stays.`,
        `Over the ground: ${sumText('×', stillRatio.replace(':1', ''), `${numberText(numberIn(forward) - inWind, 0.1)}/${numberText(numberIn(forward), 0.1)}`)} ` +
          `leaves ${left}:1. ${sumText('×', ...factors)}:`,
      ],
    },
    random,
  );
};

/** A height to 1 m or 1 ft, in the unit that distances are printed in, for a product that comes out as printed. */
function inDistanceUnit(metres: number, { distance }: PageUnits): string {
  return distance === 'ft' ? withUnit(metres / metresPerFoot, 1, 'ft') : withUnit(metres, 1, 'm');
}
