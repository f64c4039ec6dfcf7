import type { WindRow } from '../../src/flight/questions/wind-table.ts';
import type { KeyPosition } from '../../src/flight/terms/plan.ts';
import {
  formatDistance,
  formatHeight,
  formatSpeed,
  formatTime,
  heightStep,
} from '../../src/words/figures/format.ts';
import { sumText } from './by-hand.ts';
import { printedHeight } from './draw-figures.ts';
import { type Posed, shuffledChoices } from './exercise.ts';
import { wrongFigures } from './figure-choices.ts';
import type { Draw, QuestionSetting } from './question-setting.ts';
import { drawWindFlights, type WindFlights } from './wind-flights.ts';

/** How high the base key is passed in a wind other than the packet's. */
export const baseKeyHeight: Draw = (setting, random) => {
  if (!setting.plan.keys.some(({ id }) => id === 'base-key')) return undefined;
  const flights = drawWindFlights(setting, random);
  const key = flights && keyOf(flights.right, 'base-key');
  const still = flights && keyOf(flights.still, 'base-key');
  if (!key || !still) return undefined;
  return shuffledChoices(posed(setting, flights, key, still), random);
};

function posed(
  { plan, units }: QuestionSetting,
  { headwind, right, faulty }: WindFlights,
  key: KeyPosition,
  still: KeyPosition,
): Posed {
  const height = (metres: number) => formatHeight(metres, units);
  const wind = formatSpeed(headwind, units);
  const before = keyOf(right, 'downwind-key');
  const onFinal = keyOf(right, 'final');
  const straight = before
    ? before.height -
      (Math.abs(before.along - key.along) + Math.abs(before.across - key.across)) / plan.flown.glideRatio
    : (Math.abs(key.along) + Math.abs(key.across)) / plan.flown.glideRatio;
  const nearest = units.height === 'ft' ? '10 ft' : '5 m';
  return {
    question:
      `The same approach against ${wind} straight down runway ${plan.runway.name}, measured at 10 m, no gusts` +
      `${before ? `, from ${height(before.height)} at the downwind key` : ''}. How high above the spot do you pass ` +
      `the base key? (To the nearest ${nearest}.)`,
    right: height(key.height),
    wrong: wrongFigures(
      key.height,
      [
        ...faulty.map(({ row, fault }) => ({ value: keyOf(row, 'base-key')?.height, fault })),
        {
          value: straight,
          fault: `a straight glide along the pattern's legs${before ? '' : ' to the spot'}, without turns and wind`,
        },
        { value: onFinal?.height, fault: 'the height at the end of the turn to final' },
      ],
      3 * heightStep(units),
      height,
    ),
    working: [
      `In still air it is ${height(still.height)}. ` +
        (key.height > still.height
          ? `Against ${wind}, final needs more height for the same ground, so base leg is flown higher.`
          : `Against ${wind} the base turn comes at another place.`),
      ...(before ? lossSteps(before, key, right, units) : baseLegSteps(key, units)),
    ],
  };
}

/** The height lost since the downwind key, in figures that add up as they are printed. */
function lossSteps(
  before: KeyPosition,
  key: KeyPosition,
  { pastAbeam, seconds }: WindRow,
  units: QuestionSetting['units'],
): string[] {
  const lost = printedHeight(before.height, units) - printedHeight(key.height, units);
  const height = (metres: number) => formatHeight(metres, units);
  return [
    ...(pastAbeam === undefined || seconds === undefined || pastAbeam < 0
      ? []
      : [
          `Flown in this wind, the base turn starts ${formatDistance(pastAbeam, units)} past abeam, ${formatTime(seconds)} after ` +
            `the downwind key, and the base key comes ${formatTime(key.time - before.time)} after it.`,
        ]),
    `Lost by then, on the legs and in the turn: ${height(lost)}. ${sumText('−', height(before.height), height(lost))}:`,
  ];
}

function baseLegSteps(key: KeyPosition, units: QuestionSetting['units']): string[] {
  return [
    `Flown in this wind, with base leg ${formatDistance(Math.abs(key.along), units)} from the spot, the throttle closed at ` +
      'the base key brings the wheels to the spot from:',
  ];
}

function keyOf({ keys }: WindRow, id: KeyPosition['id']): KeyPosition | undefined {
  return keys.find((key) => key.id === id);
}
