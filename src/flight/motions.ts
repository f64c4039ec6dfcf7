import type { AirspeedFactor } from './air.ts';
import { standardGravity } from './constants.ts';
import { dragOverWeight, type Polar, sinOfGlide } from './glide.ts';
import { inducedDragReduction } from './ground-effect.ts';
import type { Motion, State } from './integrator.ts';
import { rollOutLead } from './turns.ts';
import { crab, type Drift, type WindField } from './wind.ts';

/**
 * The state that every motion carries: place in the spot frame (m), heading from the landing direction (rad,
 * clockwise, not wrapped), bank (rad, right positive), equivalent airspeed (m/s), path below the horizon (rad), time
 * (s), and on a ground circle the track (rad, not wrapped).
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
  readonly wind: WindField;
}

/** How soon a pilot changes speed, m/s EAS per second: about 1 kt a second (common practice, no source). */
const speedChangeRate = 0.5;

/** When a motion ends, as something left of it. */
export type Until = (state: State) => number;

/**
 * Gliding along a ground line with drift allowed for: the heading follows from track, airspeed and wind.
 * `speedChange` is 1 while speeding up, -1 while slowing down, 0 at a steady speed.
 */
export function glideAlongLine(medium: Medium, track: number, until: Until, speedChange: -1 | 0 | 1): Motion {
  const wind: Drift = { along: 0, across: 0 };
  const cosTrack = Math.cos(track);
  const sinTrack = Math.sin(track);
  return {
    longestStep: speedChange === 0 ? 2 : 1,
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const eas = state[EAS]!;
      const factor = medium.tasOverEas(height);
      const tas = eas * factor;
      const sin = sinOfGlide(medium.polar, eas, 1);
      medium.wind(height, wind);
      const speedRate = speedChange * (speedChange < 0 ? slowingRate(sin) : speedChangeRate);
      rates.fill(0);
      rates[TIME] = 1;
      overGround(rates, cosTrack, sinTrack, tas * Math.sqrt(1 - sin * sin), wind);
      // Speed gained is paid for in height, and given back when it is lost: d(V^2/2g)/dt.
      rates[HEIGHT] = -tas * sin - (tas * speedRate * factor) / standardGravity;
      rates[EAS] = speedRate;
    },
    remaining: until,
    settle(state) {
      const sin = sinOfGlide(medium.polar, state[EAS]!, 1);
      const tas = state[EAS]! * medium.tasOverEas(state[HEIGHT]!);
      medium.wind(state[HEIGHT]!, wind);
      state[HEADING] = track + crab(track, tas * Math.sqrt(1 - sin * sin), wind);
      state[BANK] = 0;
      state[PATH] = Math.asin(sin);
    },
  };
}

/**
 * Sets the rates over the ground of a track held against the drift: what the wind triangle leaves of a horizontal
 * airspeed. Where the wind across the track is stronger than that, the nose is square to the track and the rest of the
 * wind carries the aircraft off it.
 */
function overGround(rates: State, cosTrack: number, sinTrack: number, horizontal: number, wind: Drift): void {
  const offTrack = wind.across * cosTrack - wind.along * sinTrack;
  const onTrack = wind.along * cosTrack + wind.across * sinTrack;
  const left = horizontal * horizontal - offTrack * offTrack;
  const groundspeed = onTrack + Math.sqrt(Math.max(0, left));
  const carried = left < 0 ? offTrack - Math.sign(offTrack) * horizontal : 0;
  rates[ALONG] = groundspeed * cosTrack - carried * sinTrack;
  rates[ACROSS] = groundspeed * sinTrack + carried * cosTrack;
}

/** Slowing down never takes more than half of the sink away, so that height is never gained by it. */
function slowingRate(sin: number): number {
  return Math.min(speedChangeRate, (standardGravity * sin) / 2);
}

/** A gliding turn with the bank changing at a steady rate (rad/s, nought to hold it). */
export function glidingTurn(medium: Medium, rollRate: number, until: Until): Motion {
  const wind: Drift = { along: 0, across: 0 };
  return {
    longestStep: 0.75,
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const bank = state[BANK]!;
      const tas = state[EAS]! * medium.tasOverEas(height);
      const sin = sinOfGlide(medium.polar, state[EAS]!, Math.cos(bank));
      const horizontal = tas * Math.sqrt(1 - sin * sin);
      const heading = state[HEADING]!;
      medium.wind(height, wind);
      rates.fill(0);
      rates[TIME] = 1;
      rates[ALONG] = horizontal * Math.cos(heading) + wind.along;
      rates[ACROSS] = horizontal * Math.sin(heading) + wind.across;
      rates[HEIGHT] = -tas * sin;
      rates[HEADING] = (standardGravity * Math.tan(bank)) / tas;
      rates[BANK] = rollRate;
    },
    remaining: until,
    settle(state) {
      state[PATH] = Math.asin(sinOfGlide(medium.polar, state[EAS]!, Math.cos(state[BANK]!)));
    },
  };
}

/**
 * Gliding round a circle held on the ground: the track turns with the groundspeed, and the bank is what the heading's
 * own turning asks for, so it is steepest with the wind behind. `side` is 1 for a right-hand circle. A pilot rolls into
 * it and out of it over some seconds; here the bank comes on at once.
 */
export function glideRoundCircle(medium: Medium, radius: number, side: 1 | -1, until: Until): Motion {
  const wind: Drift = { along: 0, across: 0 };
  const round = (state: State) => {
    const track = state[TRACK]!;
    const cosTrack = Math.cos(track);
    const sinTrack = Math.sin(track);
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
    derivative(state, rates) {
      const { cosTrack, sinTrack, tas, sin, groundspeed } = round(state);
      rates.fill(0);
      rates[TIME] = 1;
      rates[ALONG] = groundspeed * cosTrack;
      rates[ACROSS] = groundspeed * sinTrack;
      rates[HEIGHT] = -tas * sin;
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
 * `track` in the wind here, less what passes during the roll-out. `side` is 1 for a right turn, -1 for a left.
 */
export function headingBeforeRollOut(medium: Medium, track: number, side: 1 | -1, rollRate: number): Until {
  const wind: Drift = { along: 0, across: 0 };
  return (state) => {
    const tas = state[EAS]! * medium.tasOverEas(state[HEIGHT]!);
    const sin = sinOfGlide(medium.polar, state[EAS]!, 1);
    medium.wind(state[HEIGHT]!, wind);
    const wanted = track + crab(track, tas * Math.sqrt(1 - sin * sin), wind);
    return side * (wanted - state[HEADING]!) - rollOutLead(tas, state[BANK]!, rollRate);
  };
}

/** The ground's part in the last seconds: how high the wing stands over it, in spans. */
export interface Landing {
  readonly wingSpan: number;
  readonly wingAboveWheels: number;
}

/** A pull at a constant load factor from the glide to level, in ground effect, drift allowed for. */
export function roundOut(medium: Medium, landing: Landing, pull: number): Motion {
  const wind: Drift = { along: 0, across: 0 };
  const tasOverEas = medium.tasOverEas(0);
  return {
    longestStep: 0.5,
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const eas = state[EAS]!;
      const path = state[PATH]!;
      const tas = eas * tasOverEas;
      const horizontal = tas * Math.cos(path);
      medium.wind(height, wind);
      const drag = dragOverWeight(medium.polar, eas, pull, inducedShare(landing, height));
      rates.fill(0);
      rates[TIME] = 1;
      overGround(rates, 1, 0, horizontal, wind);
      rates[HEIGHT] = -tas * Math.sin(path);
      rates[EAS] = (standardGravity * (Math.sin(path) - drag)) / tasOverEas;
      rates[PATH] = (-standardGravity * (pull - Math.cos(path))) / tas;
    },
    remaining: (state) => state[PATH]!,
    settle: (state) => settleOnCentreline(state, medium, wind, tasOverEas),
  };
}

/**
 * Hold-off: the speed falls to `touchdownEas` in ground effect while what height is left goes with it, in
 * proportion, so that the wheels meet the ground as the speed is reached. The weight's work on that descent is
 * counted. `level` is the height (m) and `entryEas` the speed at which it begins.
 */
export function holdOff(
  medium: Medium,
  landing: Landing,
  level: number,
  entryEas: number,
  touchdownEas: number,
): Motion {
  const wind: Drift = { along: 0, across: 0 };
  const tasOverEas = medium.tasOverEas(0);
  const heightPerSpeed = level / ((entryEas - touchdownEas) * tasOverEas);
  return {
    longestStep: 1,
    derivative(state, rates) {
      const height = state[HEIGHT]!;
      const eas = state[EAS]!;
      const tas = eas * tasOverEas;
      medium.wind(height, wind);
      const drag = dragOverWeight(medium.polar, eas, 1, inducedShare(landing, height));
      const slowing = (-standardGravity * drag) / (1 + (standardGravity * heightPerSpeed) / tas);
      rates.fill(0);
      rates[TIME] = 1;
      overGround(rates, 1, 0, tas, wind);
      rates[HEIGHT] = heightPerSpeed * slowing;
      rates[EAS] = slowing / tasOverEas;
    },
    remaining: (state) => state[EAS]! - touchdownEas,
    settle: (state) => settleOnCentreline(state, medium, wind, tasOverEas),
  };
}

function inducedShare(landing: Landing, height: number): number {
  return 1 - inducedDragReduction((Math.max(height, 0) + landing.wingAboveWheels) / landing.wingSpan);
}

function settleOnCentreline(state: State, medium: Medium, wind: Drift, tasOverEas: number): void {
  medium.wind(state[HEIGHT]!, wind);
  state[HEADING] = crab(0, state[EAS]! * tasOverEas * Math.cos(state[PATH]!), wind);
  state[BANK] = 0;
}
