import { airspeedFactor } from '../../src/flight/air/air.ts';
import { indicatedSpeed } from '../../src/flight/aircraft/calibration.ts';
import { sinOfGlide } from '../../src/flight/aircraft/glide.ts';
import { turnFigures } from '../../src/flight/questions/turn-figures.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { metresPerSecondPerFootPerMinute, radiansPerDegree } from '../../src/units/factors.ts';
import { withUnit } from '../../src/units/rounding.ts';
import { formatHeight, formatSpeed, heightStep, speedStep } from '../../src/words/figures/format.ts';
import { comesOutByHand, numberIn, sumText } from './by-hand.ts';
import { oneOf } from './draw-figures.ts';
import { shuffledChoices } from './exercise.ts';
import { wrongFigures } from './figure-choices.ts';
import type { Draw } from './question-setting.ts';

/** Degrees. A steeper turn at the best-glide speed makes no exercise; 20, 30 and 45 are in lessons and on cards. */
const banks = [25, 35, 40];
/** The glide speed over the stall speed in the turn: no question has less (common practice, no source). */
const leastMargin = 1.2;

/** The height that half a circle costs. */
export const heightLostInTurn: Draw = ({ plan, units }, random) => {
  const { aircraft, flown } = plan;
  const soundBanks = banks
    .map((bank) => bank * radiansPerDegree)
    .filter(
      (bank) =>
        bank <= aircraft.turns.limit + 1e-9 &&
        turnFigures(plan, bank, Math.PI).stallSpeed * leastMargin <= flown.glideSpeed,
    );
  if (soundBanks.length === 0) return undefined;
  const bank = oneOf(soundBanks, random);
  const turn = turnFigures(plan, bank, Math.PI).flown;
  if (!turn) return undefined;
  const tas = flown.glideSpeed * airspeedFactor(plan.air)(flown.keyHeight);
  const polar = { speed: flown.glideSpeed, ratio: flown.glideRatio };
  const levelSink = tas * sinOfGlide(polar, polar.speed, 1);
  const height = (metres: number) => formatHeight(metres, units);
  const inFeet = units.height === 'ft';
  // Finer than the page prints it elsewhere, so that the product comes out.
  const time = withUnit(turn.time, 0.1, 's');
  const sink = (speed: number) =>
    inFeet ? withUnit(speed / metresPerSecondPerFootPerMinute, 1, 'ft/min') : withUnit(speed, 0.01, 'm/s');
  const factors = [time, sink(turn.heightLost / turn.time)];
  if (!comesOutByHand(factors, height(turn.heightLost), inFeet ? 10 : 5, inFeet ? 60 : 1)) return undefined;
  const trueSpeed = withUnit(tas / speedStep(units), 0.1, units.speed);
  const inSinkUnit = inFeet ? metresPerSecondPerFootPerMinute : 1;
  // Doubled or halved before it is rounded, as a pilot does who works it out on paper.
  const byHand = numberIn(sink(turn.heightLost / turn.time)) * inSinkUnit * numberIn(time);
  return shuffledChoices(
    {
      question:
        `Gliding at ${formatSpeed(indicatedSpeed(flown.glideSpeed, aircraft), units)} indicated at pattern height, engine ` +
        `${plan.power === 'idle' ? 'idling' : 'stopped'}, still air: you turn through 180° at a steady ${formatAngle(bank)} of bank. ` +
        `How much height does the turn cost? (To the nearest ${inFeet ? '10 ft' : '5 m'}.)`,
      right: height(turn.heightLost),
      wrong: wrongFigures(
        turn.heightLost,
        [
          {
            value: numberIn(sink(levelSink)) * inSinkUnit * numberIn(time),
            fault: 'the sink of the straight glide',
          },
          { value: 2 * byHand, fault: 'the whole circle' },
          { value: (2 * turn.radius) / flown.glideRatio, fault: 'a straight glide across the circle' },
          {
            value: turnFigures(plan, flown.bank, Math.PI).flown?.heightLost,
            fault: `the figure of the planned bank, ${formatAngle(flown.bank)}`,
          },
          { value: byHand / 2, fault: 'a quarter of the circle' },
        ],
        2 * heightStep(units),
        height,
      ),
      working: [
        `Turn rate g tan(bank) / V, with V = ${trueSpeed} true: the half circle takes ` + `${time}.`,
        `Sink: ${sink(levelSink)} wings level, ${sink(turn.heightLost / turn.time)} at ` +
          `${formatAngle(bank)} of bank, where the wing carries more than the weight.`,
        `${sumText('×', time, sink(turn.heightLost / turn.time))}:`,
      ],
    },
    random,
  );
};
