import { runwaySize } from '../../src/drawing/pattern/pattern-labels.ts';
import { headwind } from '../../src/flight/air/wind.ts';
import { landingRunOf } from '../../src/flight/aircraft/landing-run.ts';
import type { Position } from '../../src/flight/flying/reach.ts';
import { angleBetween } from '../../src/flight/numerics/angle.ts';
import { soundFinal } from '../../src/flight/plan/final-band.ts';
import { planApproach } from '../../src/flight/plan/planner.ts';
import type { Rejection } from '../../src/flight/questions/against-a-place.ts';
import { groundFigures, screenHeight } from '../../src/flight/questions/ground.ts';
import { type Field, landingPlaces, type Place } from '../../src/flight/questions/landing-places.ts';
import type { PlanRequest } from '../../src/flight/terms/plan.ts';
import { formatDirection } from '../../src/units/angle-text.ts';
import { metresPerFoot, metresPerSecondPerKnot } from '../../src/units/factors.ts';
import { formatHeight, formatSpeed, formatWind } from '../../src/words/figures/format.ts';
import { capital } from '../../src/words/figures/letter-case.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatEdge, formatLeastHeight, formatSafeDistance } from '../../src/words/figures/safe-rounding.ts';
import { tellingApart } from '../../src/words/figures/telling-apart.ts';
import { leastFinal } from '../../src/words/gates/least-final.ts';
import { acrossWords, alongWords } from '../../src/words/keys/place-words.ts';
import { drawHeight, oneOf } from './draw-figures.ts';
import { type Choice, type ExerciseTable, type Posed, shuffledChoices } from './exercise.ts';
import { fieldsFor } from './fields-by-runway.ts';
import type { Draw, QuestionSetting } from './question-setting.ts';

/** m: heights at which an engine stops in these questions: low enough that not every place is within reach. */
const heights = [600 * metresPerFoot, 1300 * metresPerFoot] as const;
/** m and rad: places are drawn from a grid, and headings in steps that a compass shows. */
const grid = { along: [-1200, -900, -600, -300, 0, 300, 600], across: [-900, -600, -300, 300, 600, 900] };
const headingStep = Math.PI / 6;
/** m of glide lost for each radian of turn, roughly. */
const turnRoom = 70;
/** Places looked at by rough reckoning before one is flown to: each flight takes a second. */
const roughTries = 400;
/** m: a place nearer to its edge than this, on either side, gives no clear answer. */
const clear = 50 * metresPerFoot;

/** Where to land after the engine has stopped somewhere near the airfield. */
export const whichField: Draw = (setting, random) => {
  const fields = fieldsFor(setting.request.runway, setting.airfield);
  if (fields.length === 0) return undefined;
  const { request } = setting;
  const stopped: PlanRequest =
    request.power === 'idle' && request.aircraft.glide.stopped ? { ...request, power: 'stopped' } : request;
  const position = likelyPosition(fields, setting, stopped, random);
  if (!position) return undefined;
  const places = landingPlaces(position, fields, stopped);
  const inReach = places.filter(({ rejections }) => rejections.length === 0);
  const flown = stopped === request ? setting.plan : planApproach({ ...stopped, detail: 'flight' });
  const { fromScreen } = groundFigures(flown);
  if (fromScreen === undefined) return undefined;
  /** The roll is the one in the wind along the place, not along the runway. */
  const neededAt = ({ heading }: Place) => fromScreen + landingRunOf({ ...flown, runway: { heading } });
  const isAmple = (place: Place) => place.length >= 2 * neededAt(place);
  const longEnough = inReach.filter((place) => place.length >= neededAt(place));
  // A runway is known and clear: no field is better, if the runway is long enough.
  const right =
    longEnough.find(isRunway) ??
    longEnough.find(isAmple) ??
    [...longEnough].sort((a, b) => b.length - a.length)[0];
  if (!right || !isClearlyReached(right)) return undefined;
  // It must be just as clear that nothing longer is in reach.
  const isDoubtful = (place: Place) => isAmple(place) && !place.rejections.some(isClear);
  if (!isAmple(right) && !isRunway(right) && places.some(isDoubtful)) return undefined;
  const wrong = places.flatMap((place) => {
    if (place.rejections.some(isClear))
      return [{ text: nameOf(place), fault: faultOf(place, setting.units) }];
    const fault =
      place.rejections.length === 0
        ? lengthFault(place, neededAt(place), isAmple(right), setting.units)
        : undefined;
    return fault === undefined ? [] : [{ text: nameOf(place), fault }];
  });
  const best = {
    place: right,
    needed: neededAt(right),
    isAmple: isAmple(right),
    isAlone: !longEnough.some(isAmple),
  };
  return shuffledChoices(posed({ ...setting, request: stopped }, { fields, position }, best, wrong), random);
};

/**
 * With height in hand; and, where it is flown straight in, down at its spot: no lower over its near end than the
 * height from which the distance needed is counted, and no farther in than it is taught to aim.
 */
function isClearlyReached({ margins, straightIn }: Place): boolean {
  if (margins[0]!.margin < clear) return false;
  const overNearEnd = straightIn?.overNearEnd ?? Number.POSITIVE_INFINITY;
  return !straightIn || (overNearEnd >= screenHeight && straightIn.touchdown <= atSpot);
}

/** m past its spot: a touchdown this near to it counts as one at the spot. */
const atSpot = 30;

/**
 * A reason against a place that nobody can put down to a few feet, or to another way in: an obstacle that is passed
 * closely one way may be well clear another way.
 */
function isClear(rejection: Rejection): boolean {
  if (rejection.why === 'obstacle') return rejection.clearance <= 0;
  return rejection.why === 'out-of-reach' ? rejection.short >= clear : true;
}

/** Where the engine stops, and the fields about there. */
interface Stop {
  readonly fields: readonly Field[];
  readonly position: Position;
}

/** The place to land at. */
interface BestPlace {
  readonly place: Place;
  /** m, from 50 ft up to the stop. */
  readonly needed: number;
  /** It has double that. */
  readonly isAmple: boolean;
  /** No place in reach has double what it takes there. */
  readonly isAlone: boolean;
}

function posed(
  { units, plan, request }: QuestionSetting,
  { fields, position }: Stop,
  { place: right, needed, isAmple, isAlone }: BestPlace,
  wrong: readonly Required<Choice>[],
): Posed {
  const { wind, power, runway } = request;
  const room = formatSafeDistance(needed, 'up', units);
  const lies = runwaySize(right.length, units);
  const lessThanDouble = isAlone
    ? ': less than double, but no place with double is in reach'
    : ': less than double, but a runway, known and clear';
  return {
    question:
      `The engine ${power === 'stopped' ? 'stops' : 'idles and gives no more'} ${formatHeight(position.height, units)} above the spot ` +
      `of runway ${runway.name}, ${alongWords(position, units)}, ${acrossWords(position, units)} (seen in the landing direction); you ` +
      `are heading ${formatDirection(runway.heading + position.heading)}. Surface wind ${formatWind(wind.from, wind.speed, units)}; ` +
      'directions are true. Of these, where do you land?',
    table: fieldTable(fields, units),
    right: nameOf(right),
    wrong,
    working: [
      `${capital(nameOf(right))}: ${windWords(right, units)}; the ${plan.aircraft.name}, its engine ${power === 'stopped' ? 'stopped' : 'idling'}, needs ${room} from 50 ft up to the stop, ` +
        `and has ${lies}${isAmple ? '' : lessThanDouble}.`,
      `${arrivalWords(right, units)} That height is ${formatEdge(right.margins[0]!.margin, 'high', units)} more than ${leastWords(right, request, units)}` +
        `${formatHeight(right.excess, units) === formatHeight(0, units) ? '' : `; ${formatHeight(right.excess, units)} of it are too much, and are lost by a wider way in`}.`,
    ],
  };
}

function arrivalWords({ approach, straightIn, margins }: Place, units: PageUnits): string {
  const first = margins[0]!;
  const height = formatHeight(first.height, units);
  if (straightIn) {
    const { along, overNearEnd, touchdown } = straightIn;
    const over =
      overNearEnd === undefined
        ? `touching down ${alongWords({ along: touchdown, across: 0 }, units)}`
        : `over the near end at ${formatHeight(overNearEnd, units)}`;
    return (
      `No key of its pattern is met at its height, but a final is: the shortest way comes to it ${alongWords({ along, across: 0 }, units)} ` +
      `at ${height}; then straight in, ${over}.`
    );
  }
  const at = first.at === 'downwind-key' ? 'downwind key' : 'base key';
  return `The glide gets to the ${at} of a ${approach!.circuit}-hand pattern there ${height} above it.`;
}

/** What the height there is compared with: straight in, anywhere on the place will do; by a pattern, it is the spot. */
function leastWords({ straightIn }: Place, request: PlanRequest, units: PageUnits): string {
  if (!straightIn) return 'the least from which its spot is made';
  const sound = formatLeastHeight(leastFinal(request), units);
  return `the least for wings level by ${sound} and wheels on its ground`;
}

const isRunway = ({ name }: Pick<Place, 'name'>) => name.startsWith('runway ');

function nameOf({ name, heading }: Place): string {
  return isRunway({ name }) ? name : `${name}, landing ${formatDirection(heading)}`;
}

function windWords({ headwind }: Place, units: PageUnits): string {
  const speed = formatSpeed(Math.abs(headwind), units);
  if (speed === formatSpeed(0, units)) return 'no wind along it';
  return headwind > 0 ? `${speed} of headwind` : `only ${speed} of tailwind`;
}

function faultOf(place: Place, units: PageUnits): string {
  const reasons = place.rejections.filter(isClear);
  return reasons.map((rejection) => why(rejection, place, units)).join('; ');
}

/** What counts against the length of a place in reach: too little, or less than double where the right one has double. */
function lengthFault(
  { length }: Place,
  needed: number,
  rightIsAmple: boolean,
  units: PageUnits,
): string | undefined {
  const inReach = `in reach, but ${runwaySize(length, units)} is less than`;
  if (length < needed) return `${inReach} it takes from 50 ft`;
  return length < 2 * needed && rightIsAmple ? `${inReach} double what it takes` : undefined;
}

function why(rejection: Rejection, { margins }: Place, units: PageUnits): string {
  if (rejection.why === 'out-of-reach') {
    if (!Number.isFinite(rejection.short)) return 'out of reach';
    const short = `out of reach, ${formatEdge(rejection.short, 'low', units)} short`;
    return margins[0]?.at === 'final'
      ? `${short} of a sound final, even straight in`
      : `${short} at its first key, and more straight in`;
  }
  if (rejection.why === 'obstacle') {
    return rejection.clearance > 0
      ? `the way in passes too near the ${rejection.what}`
      : `the way in meets the ${rejection.what}`;
  }
  if (rejection.why === 'too-short')
    return `${formatSafeDistance(rejection.short, 'up', units)} too short, from its spot, for the roll alone`;
  const { value, limit } = tellingApart(rejection, units.speed, 'most');
  return `${value} of ${rejection.why}, over the limit of ${limit}`;
}

function fieldTable(fields: readonly Field[], units: PageUnits): ExerciseTable {
  return {
    head: ['Field', 'Its spot, from this one', 'Lies', 'Length', 'Surface'],
    rows: fields.map((field) => [
      field.name,
      `${alongWords(field, units)}, ${acrossWords(field, units)}`,
      `${formatDirection(field.heading)}/${formatDirection(field.heading + Math.PI)}`,
      runwaySize(field.length, units),
      field.surface,
    ]),
  };
}

/**
 * A place from which, by rough reckoning, at least one landing is within reach and at least three are not: a straight
 * glide to the base key of each, placed as in the packet's own flight, or on to its final.
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
      height: drawHeight(heights, units, random, 5) ?? heights[0],
      heading: Math.floor(random() * 12) * headingStep,
    };
    const landings = spots.flatMap((spot) =>
      [0, Math.PI].map((turned) => {
        const track = spot.heading - runway.heading + turned;
        const [x, y] = [position.along - spot.along, position.across - spot.across];
        const along = x * Math.cos(track) + y * Math.sin(track) - key.along;
        const across = Math.abs(-x * Math.sin(track) + y * Math.cos(track)) - Math.abs(key.across);
        const toKey = position.height - Math.hypot(along, across) / ratio - low;
        const spare = Math.max(toKey, straightSpare(position, { x, y, track }, ratio));
        const behind = -headwind(wind, spot.heading + turned) > 5 * metresPerSecondPerKnot;
        return { good: spare > 60 && !behind, bad: spare < -60 || behind };
      }),
    );
    if (landings.some(({ good }) => good) && landings.filter(({ bad }) => bad).length >= 3) return position;
  }
  return undefined;
}

/**
 * m: height to spare over that of a sound turn to final, gliding straight to where final begins and turning on to it,
 * without wind.
 */
function straightSpare(
  { height, heading }: Position,
  { x, y, track }: { readonly x: number; readonly y: number; readonly track: number },
  ratio: number,
): number {
  const before = soundFinal * ratio;
  const [toAlong, toAcross] = [-before * Math.cos(track) - x, -before * Math.sin(track) - y];
  const way = Math.atan2(toAcross, toAlong);
  const turned = Math.abs(angleBetween(heading, way)) + Math.abs(angleBetween(way, track));
  return height - (Math.hypot(toAlong, toAcross) + turnRoom * turned) / ratio - soundFinal;
}
