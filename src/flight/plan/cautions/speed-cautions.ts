import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../../units/factors.ts';
import { roundDownTo, roundTo, roundUpTo } from '../../../units/rounding.ts';
import { indicatedSpeed } from '../../aircraft/calibration.ts';
import { loadAtStall, loadFactor, stallSpeedUnder } from '../../aircraft/turns.ts';
import type { Aircraft } from '../../terms/aircraft.ts';
import type { TrackSample } from '../../terms/plan.ts';
import {
  beforeRoundOut,
  dataOf,
  type Examined,
  type Found,
  handbook,
  keyAtPhase,
  leastOf,
  told,
} from './examined.ts';

/** rad. A medium turn has no more bank than this (FAA-H-8083-3, chapter 3). */
export const mediumBank = 45 * radiansPerDegree;

/** Times the stall speed: an approach is flown with no less (FAA-H-8083-3, chapter 9), in a turn the stall speed of its bank. */
export const leastMargin = 1.3;

/** m/s: an approach speed is reached where it is met more nearly than this. */
const speedReached = 0.5 * metresPerSecondPerKnot;

/** rad. Wings within this are level. */
const level = 1e-3;

/** Bank, margins over the stall, the approach speed, and the pull of the round-out. */
export function speedCautions(examined: Examined): Found[] {
  return [
    ...bank(examined),
    ...stallMargin(examined),
    ...slow(examined),
    ...approachSpeed(examined),
    ...roundOut(examined),
  ];
}

function bank({ track, aircraft, keys }: Examined): Found[] {
  const steepest = leastOf(track, (sample) => -Math.abs(sample.bank));
  const value = Math.abs(steepest?.bank ?? 0);
  if (!steepest || value <= Math.min(mediumBank, aircraft.turns.limit) + 1e-9) return [];
  const over = value > aircraft.turns.limit + 1e-9;
  const limit = over ? aircraft.turns.limit : mediumBank;
  const said = told(value, limit, '°', 'most');
  const most = over
    ? `the limit of the ${aircraft.name} is ${said.limit}`
    : `a medium turn has ${said.limit} at most`;
  const turns = steepest.phase === 'circle' ? 'the circle' : 'the turns';
  return [
    {
      code: over ? 'bank-over-limit' : 'bank-over-medium',
      message: `A turn needs ${said.value} of bank; ${most}.`,
      value: value / radiansPerDegree,
      limit: limit / radiansPerDegree,
      source: over ? dataOf(aircraft) : `${handbook}, chapter 3`,
      at: keyAtPhase(steepest.phase, keys),
      remedy: `It would be within limits with ${turns} at ${said.limit} of bank or less: with more room, or in less wind.`,
    },
  ];
}

function stallMargin({ track, flown, keys, aircraft }: Examined): Found[] {
  const stallSpeed = (sample: TrackSample) => stallSpeedUnder(loadFactor(sample.bank), flown.stallSpeed);
  const turning = track.filter((sample) => beforeRoundOut(sample) && Math.abs(sample.bank) > level);
  const worst = leastOf(turning, (sample) => sample.eas / stallSpeed(sample));
  const value = worst ? worst.eas / stallSpeed(worst) : leastMargin;
  if (!worst || value >= leastMargin - 1e-9) return [];
  const said = told(value, leastMargin, 'times', 'least', { value: 'margin' });
  // The margin is kept where Vs sqrt(1/cos) is no more than V/1.3.
  const cosine = ((leastMargin * flown.stallSpeed) / worst.eas) ** 2;
  const most = cosine < 1 ? roundDownTo(Math.acos(cosine) / radiansPerDegree, 1) : 0;
  const fastEnough = knotsUp(leastMargin * stallSpeed(worst), aircraft);
  return [
    {
      code: 'stall-margin',
      message: `In the turn the speed is ${said.value} the stall speed at that bank; it should be at least ${said.limit}.`,
      value,
      limit: leastMargin,
      source: `${handbook}, chapter 9; stall speed in a turn: FAA-H-8083-25`,
      at: keyAtPhase(worst.phase, keys),
      remedy:
        most >= 5
          ? `It would keep the margin with the turns at ${most} degrees of bank or less.`
          : `It would keep the margin in this turn at ${fastEnough} kt or more.`,
    },
  ];
}

function slow(examined: Examined): Found[] {
  const { track, flown, keys } = examined;
  const straight = track.filter((sample) => beforeRoundOut(sample) && Math.abs(sample.bank) <= level);
  const worst = leastOf(straight, ({ eas }) => eas);
  const value = worst ? worst.eas / flown.stallSpeed : leastMargin;
  if (!worst || value >= leastMargin - 1e-9) return [];
  const said = told(value, leastMargin, 'times', 'least', { value: 'margin' });
  return [
    {
      code: 'slow',
      message: `In straight flight before the round-out the speed is ${said.value} the stall speed; it should be at least ${said.limit}.`,
      value,
      limit: leastMargin,
      source: `${handbook}, chapter 9`,
      at: keyAtPhase(worst.phase, keys),
      remedy: fasterWords(leastMargin * flown.stallSpeed - worst.eas, worst, examined),
    },
  ];
}

/** On final the wind takes some of the approach speed on the way down: so much more (m/s EAS) is asked for at its start. */
function fasterWords(lacking: number, { phase }: TrackSample, { flown, aircraft }: Examined): string {
  const onFinal = phase === 'final';
  const speed = (onFinal ? flown.approachSpeed : flown.glideSpeed) + lacking;
  return `It would keep the margin with ${onFinal ? 'an approach' : 'a glide'} at ${knotsUp(speed, aircraft)} kt or more, at this mass.`;
}

/** The airspeed, m/s EAS, as the indicator shows it, in whole knots and no less. */
const knotsUp = (eas: number, aircraft: Aircraft) =>
  roundUpTo(indicatedSpeed(eas, aircraft) / metresPerSecondPerKnot, 1);

/** Near the ground the wind drops and takes the airspeed with it: what counts is that the speed is met on final at all. */
function approachSpeed({ track, flown, keys, aircraft }: Examined): Found[] {
  const off = ({ eas }: TrackSample) => Math.abs(eas - flown.approachSpeed);
  const nearest = leastOf(
    track.filter(({ phase }) => phase === 'final'),
    off,
  );
  if (!nearest || off(nearest) <= speedReached) return [];
  const fast = nearest.eas > flown.approachSpeed;
  const shown = (eas: number) => indicatedSpeed(eas, aircraft) / metresPerSecondPerKnot;
  const planned = shown(flown.approachSpeed);
  const by = Math.max(1, roundTo(Math.abs(shown(nearest.eas) - planned), 1));
  return [
    {
      code: 'approach-speed-not-reached',
      message: `The approach speed of ${roundTo(planned, 1)} kt is not reached before the round-out: on final the speed is ${by} kt ${fast ? 'more' : 'less'} at best.`,
      value: nearest.eas,
      limit: flown.approachSpeed,
      source: 'flown by this plan',
      at: keys.find(({ id }) => id === 'final')?.id,
      remedy: `A turn to final that is complete higher leaves the time to ${fast ? 'slow down' : 'speed up'} to it.`,
    },
  ];
}

function roundOut({ aircraft, flown, track, pull, keys }: Examined): Found[] {
  const slowest = leastOf(
    track.filter(({ phase }) => phase === 'round-out'),
    ({ eas }) => eas,
  );
  const borne = slowest ? loadAtStall(slowest.eas, flown.stallSpeed) : Number.POSITIVE_INFINITY;
  const own = aircraft.roundOut.loadFactor;
  const at = keys.find(({ id }) => id === 'touchdown')?.id;
  if (pull > borne) {
    const said = told(pull, borne, 'g', 'most');
    return [
      {
        code: 'round-out-pull',
        grade: 'not-to-be-flown',
        message: `The round-out needs a pull of ${said.value}, and at its speed the wing bears ${said.limit}: it stalls.`,
        value: pull,
        limit: borne,
        source: 'load factor at the stall: FAA-H-8083-25',
        at,
        remedy: gentlerRoundOut({ aircraft, flown }, pull, borne),
      },
    ];
  }
  if (pull <= own + 1e-6) return [];
  const said = told(pull, own, 'g', 'most');
  return [
    {
      code: 'round-out-pull',
      message: `From its round-out height the ${aircraft.name} needs a pull of ${said.value} to be level in time, more than the ${said.limit} of its data.`,
      value: pull,
      limit: own,
      source: dataOf(aircraft),
      at,
      remedy: gentlerRoundOut({ aircraft, flown }, pull, borne),
    },
  ];
}

/** m. From higher nobody begins a round-out in one of our aircraft. */
const highestRoundOut = 50 * metresPerFoot;

/**
 * The height from which the aircraft's own pull is enough, or the speed at which the wing bears it. From a path down to
 * level at a load factor n takes a height that goes with 1/(n - cos(path)), so no more than goes with 1/(n - 1).
 */
function gentlerRoundOut(
  { aircraft, flown }: Pick<Examined, 'aircraft' | 'flown'>,
  pull: number,
  borne: number,
): string {
  const { height, loadFactor: own } = aircraft.roundOut;
  if (own > borne) {
    // The load that a wing bears goes with the square of the speed; what is lost on the way down goes on top.
    const lacking = flown.stallSpeed * (Math.sqrt(own) - Math.sqrt(borne));
    const knots = knotsUp(flown.approachSpeed + lacking, aircraft);
    return `With an approach at ${knots} kt or more, at this mass, the wing bears the ${own.toFixed(2)} g of the aircraft's data to the end of the round-out.`;
  }
  const enough = (height * (pull - 1)) / (own - 1);
  return enough > highestRoundOut
    ? 'A flatter final or a higher round-out would need less.'
    : `Begun at ${roundUpTo(enough / metresPerFoot, 1)} ft, the round-out would need no more than the ${own.toFixed(2)} g of the aircraft's data.`;
}
