import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../units/factors.ts';
import type { Aircraft } from './aircraft.ts';
import type { Obstacle, Runway } from './airfield.ts';
import type {
  Caution,
  CautionCode,
  Flown,
  Grade,
  KeyPosition,
  Minimums,
  Phase,
  TrackSample,
} from './plan.ts';
import { loadFactor, stallSpeedUnder } from './turns.ts';
import { crosswind } from './wind.ts';

/** What the cautions look at: a flight, and what it was flown with. */
export interface Examined {
  readonly aircraft: Aircraft;
  readonly runway: Runway;
  readonly flown: Flown;
  readonly track: readonly TrackSample[];
  readonly keys: readonly KeyPosition[];
  readonly pull: number;
  readonly minimums?: Minimums | undefined;
}

/** rad. A medium turn has no more bank than this (FAA-H-8083-3, chapter 3). */
export const mediumBank = 45 * radiansPerDegree;

/** Built-in limits. A school may tighten them, never loosen them. SI, rad. */
const limits = {
  finalTurnHeight: 300 * metresPerFoot,
  keyHeight: { low: 800 * metresPerFoot, usual: 1000 * metresPerFoot, high: 1200 * metresPerFoot },
  stallMargin: 1.3,
  obstacleClearance: 50 * metresPerFoot,
};

const handbook = 'FAA-H-8083-3';

const feet = (metres: number) => `${Math.floor(metres / metresPerFoot)} ft`;
/** A limit that must be reached: never printed lower than it is. */
const least = (metres: number) => `${Math.ceil(metres / metresPerFoot - 1e-6)} ft`;
const knots = (speed: number) => `${Math.ceil(speed / metresPerSecondPerKnot - 1e-6)} kt`;
const degrees = (angle: number) => Math.round(angle / radiansPerDegree);

/** A caution before it is graded. */
type Found = Omit<Caution, 'grade'>;

/** The grade of each caution where its size does not make it graver. */
const usualGrade: Readonly<Record<CautionCode, Grade>> = {
  'beyond-reach': 'not-to-be-flown',
  'wind-over-glide': 'not-to-be-flown',
  'obstacle-clearance': 'beyond-good-practice',
  'stall-margin': 'beyond-good-practice',
  slow: 'beyond-good-practice',
  'approach-speed-not-reached': 'beyond-good-practice',
  'bank-over-limit': 'not-to-be-flown',
  'bank-over-medium': 'beyond-good-practice',
  'wind-over-limit': 'not-to-be-flown',
  'crosswind-over-limit': 'not-to-be-flown',
  tailwind: 'beyond-good-practice',
  gust: 'beyond-good-practice',
  mass: 'not-to-be-flown',
  'off-runway': 'not-to-be-flown',
  'aim-before-threshold': 'beyond-good-practice',
  'landing-distance': 'not-to-be-flown',
  'final-turn-low': 'beyond-good-practice',
  'downwind-key-height': 'worth-knowing',
  'base-turn-far': 'worth-knowing',
  'round-out-pull': 'worth-knowing',
};

/** A caution with its grade: of some, how far past the limit decides. */
export function graded(found: Found): Caution {
  const { code, value, limit } = found;
  const grave =
    (code === 'obstacle-clearance' && value < 0) ||
    ((code === 'stall-margin' || code === 'slow') && value < 1.1) ||
    (code === 'final-turn-low' && value < (2 / 3) * limit);
  return { ...found, grade: grave ? 'not-to-be-flown' : usualGrade[code] };
}

/** Every caution that a flight earns. Values and limits in m, m/s, degrees or as plain ratios. */
export function cautionsOf(examined: Examined): Caution[] {
  return found(examined).map(graded);
}

function found(examined: Examined): Found[] {
  return [
    ...finalTurn(examined),
    ...keyHeight(examined),
    ...bank(examined),
    ...stallMargin(examined),
    ...windLimits(examined),
    ...obstacles(examined),
    ...ground(examined),
    ...roundOut(examined),
  ];
}

/** The stricter of a built-in limit and the school's, and where it comes from. */
function stricter(
  builtIn: number,
  source: string,
  own: number | undefined,
): { limit: number; source: string } {
  return own !== undefined && own > builtIn + 1e-9
    ? { limit: own, source: "the school's own minimum" }
    : { limit: builtIn, source };
}

function finalTurn({ keys, minimums }: Examined): Found[] {
  const final = keys.find((key) => key.id === 'final');
  const { limit, source } = stricter(limits.finalTurnHeight, `${handbook}, chapter 9`, minimums?.finalTurn);
  if (!final || final.height >= limit) return [];
  return [
    {
      code: 'final-turn-low',
      message: `The turn to final is complete at ${feet(final.height)}; it should be complete at ${least(limit)} or higher.`,
      value: final.height,
      limit,
      source,
    },
  ];
}

function keyHeight({ keys }: Examined): Found[] {
  const { low, high } = limits.keyHeight;
  const key = keys.find(({ id }) => id === 'downwind-key');
  if (!key || (key.height >= low - 1e-6 && key.height <= high + 1e-6)) return [];
  return [
    {
      code: 'downwind-key-height',
      message: `The downwind key is flown at ${feet(key.height)}; about 1,000 ft (800 to 1,200 ft) is usual, and judged best by eye.`,
      value: key.height,
      limit: key.height < low ? low : high,
      source: `${handbook}, chapter 9; the band about it: common practice, no source`,
    },
  ];
}

function bank({ track }: Examined): Found[] {
  const steepest = track.reduce((most, sample) => Math.max(most, Math.abs(sample.bank)), 0);
  if (steepest <= mediumBank + 1e-9) return [];
  return [
    {
      code: 'bank-over-medium',
      message: `A turn needs ${degrees(steepest)} degrees of bank; a medium turn has 45 degrees at most.`,
      value: steepest / radiansPerDegree,
      limit: 45,
      source: `${handbook}, chapter 3`,
    },
  ];
}

const turnPhases: ReadonlySet<Phase> = new Set(['circle', 'base-turn', 'final-turn']);

function stallMargin({ track, flown }: Examined): Found[] {
  const turning = track.filter((sample) => turnPhases.has(sample.phase));
  const margins = turning.map(
    (sample) => sample.eas / stallSpeedUnder(loadFactor(sample.bank), flown.stallSpeed),
  );
  const least = Math.min(...margins, Number.POSITIVE_INFINITY);
  if (least >= limits.stallMargin) return [];
  return [
    {
      code: 'stall-margin',
      message: `In the turn the speed is ${least.toFixed(2)} times the stall speed at that bank; it should be at least 1.3 times.`,
      value: least,
      limit: limits.stallMargin,
      source: `${handbook}, chapter 9; stall speed in a turn: FAA-H-8083-25`,
    },
  ];
}

function windLimits({ aircraft, runway, flown }: Examined): Found[] {
  const strongest = Math.max(flown.surfaceWind.speed, flown.gust ?? 0);
  const across = Math.abs(crosswind({ ...flown.surfaceWind, speed: strongest }, runway.heading));
  const checks = [
    { code: 'wind-over-limit', what: 'wind', value: strongest, limit: aircraft.limits.wind },
    { code: 'crosswind-over-limit', what: 'crosswind', value: across, limit: aircraft.limits.crosswind },
  ] as const;
  return checks
    .filter(({ value, limit }) => value > limit + 1e-9)
    .map(({ code, what, value, limit }) => ({
      code,
      message: `The ${what} is ${knots(value)}; the limit of the ${aircraft.name} is ${knots(limit)}.`,
      value,
      limit,
      source: `aircraft data: ${aircraft.source}`,
    }));
}

function obstacles({ runway, aircraft, track, minimums }: Examined): Found[] {
  const { limit, source } = stricter(
    limits.obstacleClearance,
    'screen height of 50 ft: 14 CFR 25.125; aircraft handbooks use the same',
    minimums?.obstacleClearance,
  );
  return runway.obstacles.flatMap((obstacle) => {
    const clearance = clearanceOver(obstacle, aircraft.wing.span / 2, track);
    if (clearance === undefined || clearance >= limit) return [];
    const message =
      clearance >= 0
        ? `The wheels pass ${feet(clearance)} above the ${obstacle.what}; ${least(limit)} is the least.`
        : `The path meets the ${obstacle.what}, ${feet(-clearance)} below its top.`;
    return [{ code: 'obstacle-clearance' as const, message, value: clearance, limit, source }];
  });
}

/** The least height of the wheels over an obstacle, m; undefined where the path does not cross it. */
function clearanceOver(
  obstacle: Obstacle,
  halfSpan: number,
  track: readonly TrackSample[],
): number | undefined {
  const reach = obstacle.width / 2 + halfSpan;
  let least: number | undefined;
  for (let i = 1; i < track.length; i++) {
    const [before, after] = [track[i - 1]!, track[i]!];
    const share = (obstacle.along - before.along) / (after.along - before.along);
    if (!(share >= 0 && share <= 1)) continue;
    const across = before.across + share * (after.across - before.across);
    if (Math.abs(across - obstacle.across) > reach) continue;
    const height = before.height + share * (after.height - before.height) - obstacle.height;
    if (least === undefined || height < least) least = height;
  }
  return least;
}

function ground({ runway, aircraft, track }: Examined): Found[] {
  const touchdown = track.at(-1)!;
  const fromLandingEnd = runway.spot + touchdown.along;
  const beside = Math.abs(touchdown.across) > runway.width / 2;
  if (fromLandingEnd < 0 || fromLandingEnd > runway.length || beside) {
    const off = Math.max(
      -fromLandingEnd,
      fromLandingEnd - runway.length,
      Math.abs(touchdown.across) - runway.width / 2,
    );
    return [
      {
        code: 'off-runway',
        message: `The wheels touch ${Math.ceil(off)} m outside the runway.`,
        value: off,
        limit: 0,
        source: `airfield data: runway ${runway.name}`,
      },
    ];
  }
  const left = runway.length - fromLandingEnd;
  if (aircraft.landingRoll <= left) return [];
  return [
    {
      code: 'landing-distance',
      message: `The landing roll of ${Math.ceil(aircraft.landingRoll)} m is longer than the ${Math.floor(left)} m of runway left after the touchdown.`,
      value: aircraft.landingRoll,
      limit: left,
      source: `aircraft and airfield data: ${aircraft.source}`,
    },
  ];
}

function roundOut({ aircraft, pull }: Examined): Found[] {
  const own = aircraft.roundOut.loadFactor;
  if (pull <= own + 1e-6) return [];
  return [
    {
      code: 'round-out-pull',
      message: `From its round-out height the ${aircraft.name} needs a pull of ${pull.toFixed(2)} g to be level in time, more than the ${own.toFixed(2)} g of its data.`,
      value: pull,
      limit: own,
      source: `aircraft data: ${aircraft.source}`,
    },
  ];
}
