import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { loadFactor, stallSpeedUnder } from '../../src/flight/aircraft/turns.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../../src/units/factors.ts';
import { numberText } from '../../src/units/rounding.ts';
import { formatMass, formatSpeed, speedStep } from '../../src/words/figures/format.ts';
import { comesOutByHand, numberIn, sumText } from './by-hand.ts';
import { oneOf } from './draw-figures.ts';
import { shuffledChoices } from './exercise.ts';
import { wrongFigures } from './figure-choices.ts';
import type { Draw } from './question-setting.ts';

/** Degrees. In less bank the stall speed rises by less than an indicator shows; 30 and 45 are in lessons and on cards. */
const banks = [35, 40, 50, 55, 60];

/**
 * Stall speed in a turn: the wings-level speed times the square root of the load factor (FAA-H-8083-25, Aerodynamics
 * of Flight).
 */
export const stallInBank: Draw = ({ plan, units }, random) => {
  const { aircraft, flown } = plan;
  const allowed = banks
    .map((bank) => bank * radiansPerDegree)
    .filter((bank) => bank <= aircraft.turns.limit + 1e-9);
  if (allowed.length === 0) return undefined;
  const bank = oneOf(allowed, random);
  const load = loadFactor(bank);
  const level = flown.stallSpeed;
  const right = stallSpeedUnder(load, level);
  const speed = (equivalent: number) => formatSpeed(indicatedSpeed(equivalent, aircraft), units);
  const printedLoad = numberText(load, 0.001);
  const root = numberText(Math.sqrt(Number(printedLoad)), 0.001);
  const calibrated = (aircraft.calibration?.length ?? 0) > 0;
  if (!calibrated && !comesOutByHand([speed(level), root], speed(right), 1)) return undefined;
  // What a fault makes of the printed stall speed; with a calibration table nobody multiplies the indicated speed.
  const times = (factor: number) =>
    calibrated ? level * factor : numberIn(speed(level)) * factor * speedStep(units);
  return shuffledChoices(
    {
      question:
        `Wings level, at ${formatMass(flown.mass)}, the ${aircraft.name} stalls at ${speed(level)} indicated. At what ` +
        `indicated speed does it stall in a level turn at ${formatAngle(bank)} of bank? (To the nearest 1 ${units.speed}.)`,
      right: speed(right),
      wrong: wrongFigures(
        right,
        [
          { value: level, fault: 'the stall speed wings level' },
          { value: times(Number(printedLoad)), fault: 'times the load factor, and not its root' },
          {
            value: times(Math.sqrt(1 / Math.sin(bank))),
            fault: 'the sine of the bank in place of its cosine',
          },
          {
            value: stallSpeedUnder(load, flown.touchdownSpeed),
            fault: 'taken from the touchdown speed',
          },
          { value: times(1 / Number(root)), fault: 'divided by the root, not multiplied' },
        ],
        // A wrong choice that an indicator would show as the right speed would be right as well.
        2 * metresPerSecondPerKnot,
        speed,
      ),
      working: [
        `Load factor in a level turn: 1 / cos ${formatAngle(bank)} = ${printedLoad}.`,
        `The stall speed goes with its root: √${printedLoad} = ${root}.`,
        ...(calibrated
          ? [
              "The root holds for the equivalent airspeed; the calibration table gives the indicator's reading.",
            ]
          : []),
        `${sumText('×', speed(level), root)}:`,
      ],
    },
    random,
  );
};
