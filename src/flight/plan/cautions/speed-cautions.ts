import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../../units/factors.ts';
import { loadAtStall, loadFactor, mediumBank, stallSpeedUnder } from '../../aircraft/turns.ts';
import type { CautionOf, Found } from '../../terms/caution.ts';
import type { TrackSample } from '../../terms/plan.ts';
import { beforeRoundOut, type Examined, keyAtPhase, leastOf } from './examined.ts';

/**
 * Multiple of the stall speed: an approach is flown with no less than this (FAA-H-8083-3, chapter 9); in a turn, with
 * the stall speed of its bank.
 */
export const leastMargin = 1.3;

/** m/s: an approach speed counts as reached when it is met to within this. */
const speedReached = 0.5 * metresPerSecondPerKnot;

/** rad. Wings within this count as level. */
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
  return [
    {
      code: over ? 'bank-over-limit' : 'bank-over-medium',
      turn: steepest.phase === 'circle' ? 'circle' : 'turns',
      value: value / radiansPerDegree,
      limit: limit / radiansPerDegree,
      source: over ? 'aircraft' : 'medium-bank',
      at: keyAtPhase(steepest.phase, keys),
    },
  ];
}

function stallMargin({ track, flown, keys }: Examined): Found[] {
  const stallSpeed = (sample: TrackSample) => stallSpeedUnder(loadFactor(sample.bank), flown.stallSpeed);
  const turning = track.filter((sample) => beforeRoundOut(sample) && Math.abs(sample.bank) > level);
  const worst = leastOf(turning, (sample) => sample.eas / stallSpeed(sample));
  const value = worst ? worst.eas / stallSpeed(worst) : leastMargin;
  if (!worst || value >= leastMargin - 1e-9) return [];
  // The margin is kept where Vs sqrt(1/cos) is no more than V/1.3.
  const cosine = ((leastMargin * flown.stallSpeed) / worst.eas) ** 2;
  const bank = cosine < 1 ? Math.acos(cosine) : 0;
  return [
    {
      code: 'stall-margin',
      value,
      limit: leastMargin,
      source: 'turning-margin',
      at: keyAtPhase(worst.phase, keys),
      remedy: bank >= leastBank ? { bank } : { eas: leastMargin * stallSpeed(worst) },
    },
  ];
}

/** rad. A turn shallower than this does not count as one. */
const leastBank = 5 * radiansPerDegree;

function slow(examined: Examined): Found[] {
  const { track, flown, keys } = examined;
  const straight = track.filter((sample) => beforeRoundOut(sample) && Math.abs(sample.bank) <= level);
  const worst = leastOf(straight, ({ eas }) => eas);
  const value = worst ? worst.eas / flown.stallSpeed : leastMargin;
  if (!worst || value >= leastMargin - 1e-9) return [];
  // On final the wind takes some of the approach speed on the way down: that much more is asked for at its start.
  const of = worst.phase === 'final' ? 'approach' : 'glide';
  const speed = of === 'approach' ? flown.approachSpeed : flown.glideSpeed;
  return [
    {
      code: 'slow',
      value,
      limit: leastMargin,
      source: 'approach-margin',
      at: keyAtPhase(worst.phase, keys),
      remedy: { eas: speed + leastMargin * flown.stallSpeed - worst.eas, of },
    },
  ];
}

/** Near the ground the wind drops and takes airspeed with it: what counts is that the speed is met somewhere on final. */
function approachSpeed({ track, flown, keys }: Examined): Found[] {
  const off = ({ eas }: TrackSample) => Math.abs(eas - flown.approachSpeed);
  const nearest = leastOf(
    track.filter(({ phase }) => phase === 'final'),
    off,
  );
  if (!nearest || off(nearest) <= speedReached) return [];
  return [
    {
      code: 'approach-speed-not-reached',
      value: nearest.eas,
      limit: flown.approachSpeed,
      source: 'flown',
      at: keys.find(({ id }) => id === 'final')?.id,
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
  const stalls = pull > borne;
  if (!stalls && pull <= own + 1e-6) return [];
  return [
    {
      code: 'round-out-pull',
      grade: stalls ? 'not-to-be-flown' : undefined,
      stalls,
      value: pull,
      limit: stalls ? borne : own,
      source: stalls ? 'load-at-stall' : 'aircraft',
      at,
      remedy: gentlerRoundOut({ aircraft, flown }, pull, borne),
    },
  ];
}

/** m. Nobody begins a round-out in one of our aircraft from higher than this. */
const highestRoundOut = 50 * metresPerFoot;

/**
 * The height from which the aircraft's own pull is enough, or the speed at which the wing can take it. Coming from a
 * path down to level at a load factor n takes a height proportional to 1/(n - cos(path)), and so no more than in
 * proportion to 1/(n - 1).
 */
function gentlerRoundOut(
  { aircraft, flown }: Pick<Examined, 'aircraft' | 'flown'>,
  pull: number,
  borne: number,
): CautionOf<'round-out-pull'>['remedy'] {
  const { height, loadFactor: own } = aircraft.roundOut;
  if (own > borne) {
    // The load that a wing can take goes with the square of the speed; what is lost on the way down is added to that.
    const lacking = flown.stallSpeed * (Math.sqrt(own) - Math.sqrt(borne));
    return { eas: flown.approachSpeed + lacking, own };
  }
  const enough = (height * (pull - 1)) / (own - 1);
  return { height: enough > highestRoundOut ? undefined : enough, own };
}
