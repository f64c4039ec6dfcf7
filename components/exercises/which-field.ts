import { type Field, landingPlaces, type Place, type Rejection } from '../../src/flight/landing-places.ts';
import type { PlanRequest } from '../../src/flight/plan.ts';
import type { Position } from '../../src/flight/reach.ts';
import { headwind } from '../../src/flight/wind.ts';
import { metresPerFoot, metresPerSecondPerKnot } from '../../src/units/factors.ts';
import {
  formatDirection,
  formatDistance,
  formatHeight,
  formatSpeed,
  formatWind,
} from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { acrossWords, alongWords } from '../place-words.ts';
import { drawHeight, oneOf } from './draw-figures.ts';
import { type ExerciseTable, shuffledChoices } from './exercise.ts';
import { fieldsFor } from './fields-by-runway.ts';
import type { Draw, QuestionSetting } from './question-setting.ts';

/** m: heights at which an engine stops in these questions: low enough that not every place is within reach. */
const heights = [600 * metresPerFoot, 1300 * metresPerFoot] as const;
/** m and rad: places are drawn from a grid, and headings in steps that a compass shows. */
const grid = { along: [-1200, -900, -600, -300, 0, 300, 600], across: [-900, -600, -300, 300, 600, 900] };
const headingStep = Math.PI / 6;
/** Places looked at by a rough reckoning before one is flown to: each flight takes a second. */
const roughTries = 400;
/** m: a place nearer to its edge than this, either way, is no clear answer. */
const clear = 50 * metresPerFoot;

/** Where to land after the engine has stopped somewhere near the airfield. */
export const whichField: Draw = (setting, random) => {
  const fields = fieldsFor(setting.request.runway, setting.airfield);
  if (fields.length === 0) return undefined;
  const { request } = setting;
  const stopped: PlanRequest = request.aircraft.glide.stopped ? { ...request, power: 'stopped' } : request;
  const position = likelyPosition(fields, setting, stopped, random);
  if (!position) return undefined;
  const places = landingPlaces(position, fields, stopped);
  const right = places.find(
    ({ rejections, margins }) => rejections.length === 0 && margins[0]!.margin >= clear,
  );
  const wrong = places.filter(({ rejections }) => rejections.some(isClear));
  return right && asked(setting, stopped, fields, position, right, wrong, random);
};

/** A reason against a place that nobody can take for a matter of a few feet. */
function isClear(rejection: Rejection): boolean {
  return rejection.why === 'out-of-reach' ? rejection.short >= clear : true;
}

function asked(
  { units, plan }: QuestionSetting,
  { wind, power, runway }: PlanRequest,
  fields: readonly Field[],
  position: Position,
  right: Place,
  wrong: readonly Place[],
  random: () => number,
) {
  const first = right.margins[0]!;
  const side = right.approach!.circuit;
  const at = first.at === 'downwind-key' ? 'downwind key' : 'base key';
  return shuffledChoices(
    {
      question:
        `The engine ${power === 'stopped' ? 'stops' : 'idles and gives no more'} ${formatHeight(position.height, units)} above the spot ` +
        `of runway ${runway.name}, ${alongWords(position, units)}, ${acrossWords(position, units)} (seen in the landing direction); you ` +
        `are heading ${formatDirection(runway.heading + position.heading)}. Surface wind ${formatWind(wind.from, wind.speed, units)}; ` +
        'directions are true. Of these, where do you land?',
      table: fieldTable(fields, units),
      right: nameOf(right),
      wrong: wrong.map((place) => ({
        text: nameOf(place),
        fault: place.rejections
          .filter(isClear)
          .map((rejection) => why(rejection, units))
          .join('; '),
      })),
      working: [
        `${upperFirst(nameOf(right))}: ${windWords(right, units)}, and the ${plan.aircraft.name} stops within it. The glide gets to the ` +
          `${at} of a ${side}-hand pattern there ${formatHeight(first.height, units)} above it.`,
        `That is ${formatHeight(first.margin, units)} more than the least that it takes` +
          `${right.excess > 0 ? ', with height to lose before' : ''}; each of the others fails.`,
      ],
    },
    random,
  );
}

function nameOf({ name, heading }: Place): string {
  return name.startsWith('runway ') ? name : `${name}, landing ${formatDirection(heading)}`;
}

function windWords({ headwind }: Place, units: PageUnits): string {
  const speed = formatSpeed(Math.abs(headwind), units);
  if (speed === formatSpeed(0, units)) return 'no wind along it';
  return headwind > 0 ? `${speed} of headwind` : `only ${speed} of tailwind`;
}

function why(rejection: Rejection, units: PageUnits): string {
  if (rejection.why === 'out-of-reach') {
    return Number.isFinite(rejection.short)
      ? `out of reach, ${formatHeight(rejection.short, units)} short at its first key`
      : 'out of reach';
  }
  if (rejection.why === 'obstacle') return 'too near an obstacle';
  if (rejection.why === 'too-short') return `${formatDistance(rejection.short, units)} too short`;
  const words = { tailwind: 'of tailwind', crosswind: 'of crosswind', wind: 'of wind, over the limit' };
  return `${formatSpeed(rejection.value, units)} ${words[rejection.why]}`;
}

function fieldTable(fields: readonly Field[], units: PageUnits): ExerciseTable {
  return {
    head: ['Field', 'From the spot', 'Lies', 'Length', 'Surface'],
    rows: fields.map((field) => [
      field.name,
      `${alongWords(field, units)}, ${acrossWords(field, units)}`,
      `${formatDirection(field.heading)}/${formatDirection(field.heading + Math.PI)}`,
      formatDistance(field.length, units),
      field.surface,
    ]),
  };
}

/**
 * A place from which, by a rough reckoning, at least one landing is within reach and at least three are not: a straight
 * glide to the base key of each, wherever the packet's own flight has its base key.
 */
function likelyPosition(
  fields: readonly Field[],
  { plan, units }: QuestionSetting,
  { runway, wind, power }: PlanRequest,
  random: () => number,
): Position | undefined {
  const key = plan.keys.find(({ id }) => id === 'base-key') ?? { along: -500, across: 400 };
  const low = plan.gates.find(({ at }) => at === 'base-key')?.low ?? 0.6 * plan.flown.keyHeight;
  const ratio = plan.aircraft.glide[power]?.ratio ?? plan.flown.glideRatio;
  const spots = [{ along: 0, across: 0, heading: runway.heading }, ...fields];
  for (let tries = 0; tries < roughTries; tries++) {
    const position: Position = {
      along: oneOf(grid.along, random),
      across: oneOf(grid.across, random),
      height: drawHeight(...heights, units, random, 5) ?? heights[0],
      heading: Math.floor(random() * 12) * headingStep,
    };
    const landings = spots.flatMap((spot) =>
      [0, Math.PI].map((turned) => {
        const track = spot.heading - runway.heading + turned;
        const [x, y] = [position.along - spot.along, position.across - spot.across];
        const along = x * Math.cos(track) + y * Math.sin(track) - key.along;
        const across = Math.abs(-x * Math.sin(track) + y * Math.cos(track)) - Math.abs(key.across);
        const spare = position.height - Math.hypot(along, across) / ratio - low;
        const behind = -headwind(wind, spot.heading + turned) > 5 * metresPerSecondPerKnot;
        return { good: spare > 60 && !behind, bad: spare < -60 || behind };
      }),
    );
    if (landings.some(({ good }) => good) && landings.filter(({ bad }) => bad).length >= 3) return position;
  }
  return undefined;
}

function upperFirst(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
