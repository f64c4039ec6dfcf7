import { metresPerFoot } from '../../units/factors.ts';
import type { AirspeedFactor } from '../air/air.ts';
import { standardGravity } from '../air/constants.ts';
import { crab, type Drift, roundedAbout, stillAir, type Wind, type WindField } from '../air/wind.ts';
import { dragOverWeight, type Polar, sinOfGlide } from '../aircraft/glide.ts';
import { inducedDragReduction } from '../aircraft/ground-effect.ts';
import { rollOutLead, turnRate } from '../aircraft/turns.ts';
import type { Motion, State } from '../numerics/integrator.ts';
import { cosine, sine } from '../numerics/steady-math.ts';

/**
 * The state that every motion has: place in the spot frame (m), heading from the landing direction (rad, clockwise,
 * not wrapped), bank (rad, right positive), equivalent airspeed (m/s), path below the horizon (rad), time (s), and on
 * a ground circle the track (rad, not wrapped).
 */
export const ALONG = 0;
export const ACROSS = 1;
export const HEIGHT = 2;
export const HEADING = 3;
export const BANK = 4;
export const EAS = 5;
export const PATH = 6;
export const TIME = 7;
export const TRACK = 8;
export const stateSize = 9;

/** What the aircraft flies in: its polar at the flown mass, the air, the wind. */
export interface Medium {
  readonly polar: Polar;
  readonly tasOverEas: AirspeedFactor;
  /** 1/m: how the true airspeed of a constant equivalent airspeed grows with height. */
  readonly thinning: (height: number) => number;
  readonly wind: WindField;
  /** m: heights around which the wind's change with height is different above and below; left out, there are none. */
  readonly windBends?: readonly number[] | undefined;
  /** m/s: how fast the air itself sinks (negative: rises) from the start to the round-out. Left out, it does neither. */
  readonly sinkingAir?: number | undefined;
}

/**
 * m. Down to this height the pilot holds the airspeed with the nose, whatever the wind does; below it the eyes are on
 * the round-out, the nose stays where it is, and a wind that drops takes airspeed (common practice, no source; the
 * height is the screen height of 14 CFR 25.125).
 */
export const speedHeldDownTo = 50 * metresPerFoot;

/**
 * However fast the wind drops, no pilot lets the sink grow to more than this many times the steady one to hold the
 * airspeed: the rest comes off the airspeed (a judgement of ours, no source). This happens only in gales, or very
 * low.
 */
const steepest = 2;

/** How a glide is paid for: see `descend`. */
interface Descent {
  /** m/s: sink of the steady glide at this airspeed and bank. */
  readonly steady: number;
  /** m/s. */
  readonly tas: number;
  /** TAS over EAS. */
  readonly factor: number;
  readonly height: number;
  /** m2/s2 for each metre: the air velocity times the wind's change with height. */
  readonly shear: number;
  /** m/s2: the gain of true airspeed that the pilot asks for. */
  readonly gain: number;
  /** True where the airspeed is held with the nose, false where the nose stays and the airspeed follows. */
  readonly held: boolean;
}

/**
 * Sets the rates of height and airspeed of a glide. Along the path, in axes that move with the wind, m dV/dt = m g
 * sin(path) - D - m dW/dt along the air velocity (Etkin, Dynamics of Atmospheric Flight, 1972, chapter 13, the
 * equations of motion in a wind that varies; from memory), so that, with V the air velocity, h the height and W the
 * wind, sink (1 + (V dV/dh + V . dW/dh)/g) = V D/W + V (gain)/g.
 */
function descend(
  rates: State,
  medium: Medium,
  { steady, tas, factor, height, shear, gain, held }: Descent,
): void {
  const worth = 1 + (tas * tas * medium.thinning(height) + shear) / standardGravity;
  // Sinking air takes height without anything in return; what the aircraft passes through on the way is paid for like
  // the rest.
  const spent = steady + (medium.sinkingAir ?? 0);
  const needed = spent + (tas * gain) / standardGravity;
  const kept = held && worth * steepest >= 1;
  const sink = kept ? needed / worth : held ? needed * steepest : needed;
  rates[HEIGHT] = -sink;
  rates[EAS] = (kept ? gain : (standardGravity / tas) * (sink * worth - spent)) / factor;
}

/** How quickly a pilot changes speed, m/s EAS per second: about 1 kt a second (common practice, no source). */
const speedChangeRate = 0.5;

const gliding = [ALONG, ACROSS, HEIGHT, EAS, TIME] as const;
const turning = [...gliding, HEADING] as const;
const rolling = [...turning, BANK] as const;

/**
 * s. The wind changes with the logarithm of height: steps grow with height, and are short near the ground and near a
 * bend.
 */
function lineStep(state: State, medium: Medium, longest: number): number {
  const height = Math.abs(state[HEIGHT]!);
  return Math.min(longest, Math.max(0.5, height / 8), stepToBend(height, medium));
}

/** m/s: height hardly ever changes faster than this. */
const fastSink = 4;

/** s: within the rounded part of a bend of the wind, steps are short; and no step leads across it from afar. */
function stepToBend(height: number, { windBends = [] }: Medium): number {
  let longest = Number.POSITIVE_INFINITY;
  for (const bend of windBends) {
    const rounded = roundedAbout(bend);
    longest = Math.min(longest, Math.max(rounded, Math.abs(height - bend) - rounded) / fastSink);
  }
  return longest;
}

/** At most this many free steps of a straight leg, and of a turn: many minutes. */
const mostOfLine = 400;
const mostOfTurn = 250;

/** s, at most: at a steady speed, while it changes, and in the last part of final, where the wind changes fast. */
const steadyStep = 8;
const changingStep = 3;
const lastStep = 0.5;

/** rad: how much the heading may change, and the bank, in one step of a turn. */
const turnedInStep = 0.4;
const rollStep = (15.1 * Math.PI) / 180;

/** s: the faster the turn, the shorter its steps. */
function turnStep(state: State, medium: Medium): number {
  const tas = state[EAS]! * medium.tasOverEas(state[HEIGHT]!);
  return Math.min(
    2,
    turnedInStep / Math.abs(turnRate(tas, state[BANK]!)),
    stepToBend(state[HEIGHT]!, medium),
  );
}

/** When a motion ends, as something left of it. */
export type Until = (state: State) => number;

/**
 * What the pilot does about the airspeed: holds it with the nose, speeds up, slows down, or leaves the nose where it is,
 * and the airspeed follows the wind.
 */
export type SpeedControl = 'held' | 'faster' | 'slower' | 'left';

const speedChanges = { held: 0, faster: 1, slower: -1, left: 0 } as const;

/** A glide along a ground line with drift allowed for: the heading follows from track, airspeed and wind. */
export function glideAlongLine(medium: Medium, track: number, until: Until, speed: SpeedControl): Motion {
  const wind = stillAir();
  const direction = directionOf(track);
  const held = speed !== 'left';
  const speedChange = speedChanges[speed];
  // At a steady speed the glide angle is the same from step to step.
  let [lastEas, sin, cos] = [Number.NaN, 0, 1];
  const rate = (state: State, rates: State) => {
    const height = state[HEIGHT]!;
    const eas = state[EAS]!;
    const factor = medium.tasOverEas(height);
    const tas = eas * factor;
    if (eas !== lastEas) {
      lastEas = eas;
      sin = sinOfGlide(medium.polar, eas, 1);
      cos = Math.sqrt(1 - sin * sin);
    }
    medium.wind(height, wind);
    const speedRate = speedChange * (speedChange < 0 ? slowingRate(sin, factor) : speedChangeRate);
    rates[TIME] = 1;
    const horizontal = tas * cos;
    overGround(rates, direction, horizontal, wind);
    // The air velocity is the velocity over the ground minus the wind.
    const shear =
      (rates[ALONG]! - wind.along) * wind.alongShear + (rates[ACROSS]! - wind.across) * wind.acrossShear;
    descend(rates, medium, { steady: tas * sin, tas, factor, height, shear, gain: speedRate * factor, held });
  };
  const settled = new Float64Array(stateSize);
  const longest = !held ? lastStep : speedChange === 0 ? steadyStep : changingStep;
  return {
    mostSteps: mostOfLine,
    longestStep: (state) => lineStep(state, medium, longest),
    moves: gliding,
    derivative: rate,
    remaining: until,
    settle(state) {
      rate(state, settled);
      const tas = state[EAS]! * medium.tasOverEas(state[HEIGHT]!);
      state[HEADING] = track + crab(track, tas * cos, wind);
      state[BANK] = 0;
      state[PATH] = Math.asin(Math.min(1, -settled[HEIGHT]! / tas));
    },
  };
}

/** Of a track, worked out once for all the steps along it. */
export interface Direction {
  readonly cos: number;
  readonly sin: number;
}

export function directionOf(track: number): Direction {
  return { cos: cosine(track), sin: sine(track) };
}

/** Landings are flown along it. */
const centreline: Direction = { cos: 1, sin: 0 };

/**
 * Sets the rates over the ground of a track held against the drift: what the wind triangle leaves of a horizontal
 * airspeed. Where the wind across the track is stronger than that, the nose is square to the track and the rest of the
 * wind carries the aircraft off it.
 */
export function overGround(rates: State, { cos, sin }: Direction, horizontal: number, wind: Drift): void {
  const offTrack = wind.across * cos - wind.along * sin;
  const onTrack = wind.along * cos + wind.across * sin;
  const left = horizontal * horizontal - offTrack * offTrack;
  const groundspeed = onTrack + Math.sqrt(Math.max(0, left));
  const carried = left < 0 ? offTrack - Math.sign(offTrack) * horizontal : 0;
  rates[ALONG] = groundspeed * cos - carried * sin;
  rates[ACROSS] = groundspeed * sin + carried * cos;
}

/** Slowing down never takes away more than half of the sink, so that height is never gained by it. */
function slowingRate(sin: number, tasOverEas: number): number {
  return Math.min(speedChangeRate, (standardGravity * sin) / (2 * tasOverEas));
}

/** A gliding turn with the bank changing at a steady rate (rad/s; 0 to hold it). */
export function glidingTurn(medium: Medium, rollRate: number, until: Until): Motion {
  const wind = stillAir();
  // While bank and speed are held, what follows from them is the same from step to step.
  let [lastBank, lastEas, sin, cos, tan] = [Number.NaN, Number.NaN, 0, 1, 0];
  return {
    mostSteps: mostOfTurn,
    longestStep: rollRate === 0 ? (state) => turnStep(state, medium) : rollStep / Math.abs(rollRate),
    moves: rollRate === 0 ? turning : rolling,
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const bank = state[BANK]!;
      const eas = state[EAS]!;
      const factor = medium.tasOverEas(height);
      const tas = eas * factor;
      if (bank !== lastBank || eas !== lastEas) {
        [lastBank, lastEas] = [bank, eas];
        sin = sinOfGlide(medium.polar, eas, cosine(bank));
        cos = Math.sqrt(1 - sin * sin);
        tan = Math.tan(bank);
      }
      const heading = state[HEADING]!;
      medium.wind(height, wind);
      rates[TIME] = 1;
      const t = Math.tan(heading / 2);
      const part = (tas * cos) / (1 + t * t);
      const [ahead, aside] = [part * (1 - t * t), part * 2 * t];
      rates[ALONG] = ahead + wind.along;
      rates[ACROSS] = aside + wind.across;
      const shear = ahead * wind.alongShear + aside * wind.acrossShear;
      descend(rates, medium, { steady: tas * sin, tas, factor, height, shear, gain: 0, held: true });
      rates[HEADING] = (standardGravity * tan) / tas;
      rates[BANK] = rollRate;
    },
    remaining: until,
    settle(state) {
      state[PATH] = Math.asin(sinOfGlide(medium.polar, state[EAS]!, cosine(state[BANK]!)));
    },
  };
}

/**
 * A glide round a circle held on the ground: the track turns with the groundspeed, and the bank is what the turning
 * of the heading requires, so it is steepest with the wind behind. `side` is 1 for a right-hand circle. A pilot rolls
 * into it and out of it over some seconds; here the bank comes on at once.
 */
export function glideRoundCircle(medium: Medium, radius: number, side: 1 | -1, until: Until): Motion {
  const wind = stillAir();
  const round = (state: State) => {
    const track = state[TRACK]!;
    const cosTrack = cosine(track);
    const sinTrack = sine(track);
    const height = state[HEIGHT]!;
    const tas = state[EAS]! * medium.tasOverEas(height);
    medium.wind(height, wind);
    const onTrack = wind.along * cosTrack + wind.across * sinTrack;
    const offTrack = wind.across * cosTrack - wind.along * sinTrack;
    let cosBank = 1;
    let before = 0;
    let sin = 0;
    let groundspeed = 0;
    // The bank and the glide angle depend on each other, weakly: a few rounds settle them.
    for (let rounds = 0; rounds < 8 && Math.abs(cosBank - before) > 1e-10; rounds++) {
      before = cosBank;
      sin = sinOfGlide(medium.polar, state[EAS]!, cosBank);
      const horizontal = tas * Math.sqrt(Math.max(0, 1 - sin * sin));
      const upTrack = Math.sqrt(Math.max(1e-9, horizontal * horizontal - offTrack * offTrack));
      groundspeed = onTrack + upTrack;
      // Heading = track + crab, so it turns at groundspeed^2/(radius x airspeed along the track).
      const turning = (groundspeed * groundspeed) / (radius * upTrack);
      cosBank = 1 / Math.hypot(1, (tas * turning) / standardGravity);
    }
    return { cosTrack, sinTrack, tas, sin, groundspeed, cosBank };
  };
  return {
    longestStep: 0.5,
    moves: [...gliding, TRACK],
    derivative(state, rates) {
      const { cosTrack, sinTrack, tas, sin, groundspeed } = round(state);
      const height = state[HEIGHT]!;
      rates[TIME] = 1;
      rates[ALONG] = groundspeed * cosTrack;
      rates[ACROSS] = groundspeed * sinTrack;
      const shear =
        (rates[ALONG]! - wind.along) * wind.alongShear + (rates[ACROSS]! - wind.across) * wind.acrossShear;
      const factor = medium.tasOverEas(height);
      descend(rates, medium, { steady: tas * sin, tas, factor, height, shear, gain: 0, held: true });
      rates[TRACK] = (side * groundspeed) / radius;
    },
    remaining: until,
    settle(state) {
      const { tas, sin, cosBank } = round(state);
      state[HEADING] = state[TRACK]! + crab(state[TRACK]!, tas * Math.sqrt(Math.max(0, 1 - sin * sin)), wind);
      state[BANK] = side * Math.acos(cosBank);
      state[PATH] = Math.asin(Math.min(1, sin));
    },
  };
}

/**
 * What is left of a turn before its roll-out must begin, rad: from the heading now to the heading that will hold
 * `track` in the wind here, less what it turns during the roll-out. `side` is 1 for a right turn, -1 for a left.
 */
export function headingBeforeRollOut(medium: Medium, track: number, side: 1 | -1, rollRate: number): Until {
  const wind = stillAir();
  // The speed does not change in a turn.
  let [lastEas, cos] = [Number.NaN, 1];
  return (state) => {
    const eas = state[EAS]!;
    if (eas !== lastEas) {
      lastEas = eas;
      const sin = sinOfGlide(medium.polar, eas, 1);
      cos = Math.sqrt(1 - sin * sin);
    }
    const tas = eas * medium.tasOverEas(state[HEIGHT]!);
    medium.wind(state[HEIGHT]!, wind);
    const wanted = track + crab(track, tas * cos, wind);
    return side * (wanted - state[HEADING]!) - rollOutLead(tas, state[BANK]!, rollRate);
  };
}

/** The ground's part in the last seconds: how high the wing is above it, in spans. */
export interface Landing {
  readonly wingSpan: number;
  readonly wingAboveWheels: number;
}

/** A pull at a constant load factor from the glide to level, in ground effect, drift allowed for. */
export function roundOut(medium: Medium, landing: Landing, pull: number): Motion {
  const wind = stillAir();
  const tasOverEas = medium.tasOverEas(0);
  return {
    longestStep: 0.2,
    moves: [ALONG, ACROSS, HEIGHT, EAS, PATH, TIME],
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const eas = state[EAS]!;
      const path = state[PATH]!;
      const tas = eas * tasOverEas;
      const horizontal = tas * cosine(path);
      medium.wind(height, wind);
      const drag = dragOverWeight(medium.polar, eas, pull, inducedShare(landing, height));
      rates[TIME] = 1;
      overGround(rates, centreline, horizontal, wind);
      const sink = tas * sine(path);
      rates[HEIGHT] = -sink;
      // What the wind loses on the way down comes off the airspeed.
      const lost = -sink * alongPath(rates, wind, tas);
      rates[EAS] = (standardGravity * (sine(path) - drag) - lost) / tasOverEas;
      rates[PATH] = (-standardGravity * (pull - cosine(path))) / tas;
    },
    remaining: (state) => state[PATH]!,
    settle: (state) => settleOnCentreline(state, medium, wind, tasOverEas),
  };
}

/** Where the wind drops so fast that it takes nearly all of the speed by itself, no hold-off can be flown. */
const leastWorth = 0.2;

/** From what to what a hold-off is flown. */
export interface HoldOff {
  /** m: the height at which it begins. */
  readonly level: number;
  /** m/s: the speed at which it begins. */
  readonly entryEas: number;
  readonly touchdownEas: number;
}

/**
 * Hold-off: the speed falls to `touchdownEas` in ground effect while what height is left goes with it, in
 * proportion, so that the wheels meet the ground as the speed is reached. The weight's work on that descent is
 * counted. Its rates are NaN where the wind does not allow it.
 */
export function holdOff(
  medium: Medium,
  landing: Landing,
  { level, entryEas, touchdownEas }: HoldOff,
): Motion {
  const wind = stillAir();
  const tasOverEas = medium.tasOverEas(0);
  const heightPerSpeed = level / ((entryEas - touchdownEas) * tasOverEas);
  return {
    longestStep: 0.3,
    moves: [ALONG, ACROSS, HEIGHT, EAS, TIME],
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const eas = state[EAS]!;
      const tas = eas * tasOverEas;
      medium.wind(height, wind);
      const drag = dragOverWeight(medium.polar, eas, 1, inducedShare(landing, height));
      rates[TIME] = 1;
      overGround(rates, centreline, tas, wind);
      const worth = 1 + heightPerSpeed * (standardGravity / tas + alongPath(rates, wind, tas));
      const slowing = worth > leastWorth ? (-standardGravity * drag) / worth : Number.NaN;
      rates[HEIGHT] = heightPerSpeed * slowing;
      rates[EAS] = slowing / tasOverEas;
    },
    remaining: (state) => state[EAS]! - touchdownEas,
    settle: (state) => settleOnCentreline(state, medium, wind, tasOverEas),
  };
}

/** 1/s: the wind's change with height, along the air velocity of a track whose rates over the ground are known. */
function alongPath(rates: State, wind: Wind, tas: number): number {
  return (
    ((rates[ALONG]! - wind.along) * wind.alongShear + (rates[ACROSS]! - wind.across) * wind.acrossShear) / tas
  );
}

function inducedShare(landing: Landing, height: number): number {
  return 1 - inducedDragReduction((Math.max(height, 0) + landing.wingAboveWheels) / landing.wingSpan);
}

function settleOnCentreline(state: State, medium: Medium, wind: Wind, tasOverEas: number): void {
  medium.wind(state[HEIGHT]!, wind);
  state[HEADING] = crab(0, state[EAS]! * tasOverEas * cosine(state[PATH]!), wind);
  state[BANK] = 0;
}
