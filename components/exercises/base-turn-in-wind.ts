import { airspeedFactor } from '../../src/flight/air/air.ts';
import { approaches } from '../../src/flight/approaches/approaches.ts';
import type { WindRow } from '../../src/flight/questions/wind-table.ts';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { formatDistance, formatHeight, formatSpeed, formatTime } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { printedDistance } from './draw-figures.ts';
import { shuffledChoices } from './exercise.ts';
import { wrongFigures } from './figure-choices.ts';
import type { Draw } from './question-setting.ts';
import { drawWindFlights } from './wind-flights.ts';

/** m. Nobody can tell apart two base turns that are nearer to each other. */
const gap = 30;

/** Where the base turn starts in a wind other than the packet's. */
export const baseTurnInWind: Draw = (setting, random) => {
  const { plan, units } = setting;
  if (!plan.keys.some(({ id }) => id === 'base-turn')) return undefined;
  const flights = drawWindFlights(setting, random);
  const right = flights && baseTurn(flights.right);
  const still = flights && baseTurn(flights.still);
  const key = flights?.right.keys.find(({ id }) => id === 'downwind-key');
  if (!right || !still || !key || right.seconds < 1) return undefined;
  const { headwind } = flights;

  const straight = straightOutAndBack(plan, key.height, Math.abs(key.across), headwind);
  const faulty = [
    ...flights.faulty.map(({ row, fault }) => ({ turn: baseTurn(row), fault })),
    {
      turn: straight,
      fault: 'a straight glide out and back: no height allowed for the turns and the round-out',
    },
  ];
  const secondsOf = new Map(faulty.map(({ turn }) => [turn?.pastAbeam, turn?.seconds ?? 0]));
  const wind = formatSpeed(headwind, units);
  const pace = right.pastAbeam / right.seconds;
  return shuffledChoices(
    {
      question:
        `The wind has changed: a headwind of ${wind} straight down runway ${plan.runway.name}, measured at 10 m, no gusts. All else ` +
        `stays: ${approaches[plan.approach].startsAt !== 'downwind-key' ? 'you come to' : plan.power === 'idle' ? 'you close the throttle at' : 'the engine stops at'} the downwind key at ${formatHeight(key.height, units)}, ` +
        `${formatDistance(Math.abs(key.across), units)} from the centreline. Where do you start the base turn? ` +
        `${toTheNearest(units)}`,
      right: turnWords(right, units),
      wrong: wrongFigures(
        right.pastAbeam,
        faulty.map(({ turn, fault }) => ({ value: turn?.pastAbeam, fault })),
        gap,
        (value) => turnWords({ pastAbeam: value, seconds: secondsOf.get(value)! }, units),
      ),
      working: [
        `In still air the base turn starts ${turnWords(still, units)}.`,
        shiftWords(printedDistance(still.pastAbeam, units) - printedDistance(right.pastAbeam, units), units),
        `On downwind the same wind is behind you: about ${formatSpeed(pace, units)} over the ground, ` +
          `so ${formatDistance(right.pastAbeam, units)} take ${formatTime(right.seconds)}.`,
      ],
    },
    random,
  );
};

interface BaseTurn {
  readonly pastAbeam: number;
  readonly seconds: number;
}

function baseTurn({ pastAbeam, seconds }: WindRow): BaseTurn | undefined {
  return pastAbeam === undefined || seconds === undefined || pastAbeam < gap
    ? undefined
    : { pastAbeam, seconds };
}

function turnWords({ pastAbeam, seconds }: BaseTurn, units: PageUnits): string {
  return `${formatDistance(pastAbeam, units)} past abeam, ${formatTime(seconds)} after the downwind key`;
}

/** How much sooner the turn starts (m), from figures as they are printed. */
function shiftWords(sooner: number, units: PageUnits): string {
  const by = formatDistance(Math.abs(sooner), units);
  return sooner > 0
    ? `A headwind on final costs ground: flown through it, the turn that ends at the spot starts ${by} sooner.`
    : `Flown through this wind, the turn that ends at the spot starts ${by} later.`;
}

function toTheNearest(units: PageUnits): string {
  return `(Distance to the nearest ${units.distance === 'ft' ? '50 ft' : '10 m'}, time to the nearest second.)`;
}

/** What the best glide has left over the spacing, flown out with the wind and back against it. */
function straightOutAndBack(
  plan: Plan,
  height: number,
  spacing: number,
  headwind: number,
): BaseTurn | undefined {
  const { glideSpeed, glideRatio } = plan.flown;
  const speed = glideSpeed * airspeedFactor(plan.air)(height / 2);
  const [out, back] = [speed + headwind, speed - headwind];
  if (back <= 0) return undefined;
  const pastAbeam = (height * glideRatio - spacing) / speed / (1 / out + 1 / back);
  return { pastAbeam, seconds: pastAbeam / out };
}
