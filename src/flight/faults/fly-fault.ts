import { positiveAngle, stillAir } from '../air/wind.ts';
import { loadFactor, stallSpeedUnder } from '../aircraft/turns.ts';
import type { Conditions } from '../flying/conditions.ts';
import { type FlownPattern, flyPattern } from '../flying/fly-pattern.ts';
import { between } from '../flying/keys.ts';
import type { LandingLog } from '../flying/landing-legs.ts';
import { cautionsOf } from '../plan/cautions.ts';
import type {
  FaultChange,
  FaultFlight,
  FaultLanding,
  KeyDifference,
  LandingFigures,
  StallMargins,
} from '../terms/fault.ts';
import type { KeyId } from '../terms/key.ts';
import type { KeyPosition, Phase, TrackSample } from '../terms/plan.ts';
import { type ChangedApproach, changedApproach } from './changed-approach.ts';
import type { FaultPlan } from './fault-plan.ts';

/** Whether the pilot sees in the hold-off that the aircraft is higher than it should be. */
export type LandedBy = 'unnoticed' | 'noticed';

/**
 * Flies a planned approach with one thing changed and nobody noticing, through the same integrator as the plan. A change
 * of no size ends where the plan does. `changedApproach` says what is done as planned. Where `landing` is `noticed`, a
 * round-out that ends too high is held off afresh, all the way down.
 */
export function flyFault(plan: FaultPlan, change: FaultChange, landing: LandedBy = 'unnoticed'): FaultFlight {
  const { request, pattern: planned } = plan;
  const approach = changedApproach(plan, change, landing === 'noticed');
  if ('refused' in approach) return { flown: false, change, reason: approach.refused };
  const { procedure, resolved, log } = approach;
  const { conditions, flown } = resolved;
  const pattern = flyPattern(procedure, conditions, request.runway.heading);
  const { track, flyable } = pattern.flight;
  if (!flyable) return { flown: false, change, reason: 'leg-cannot-be-flown' };
  const stall = {
    planned: stallMargins(planned, plan.resolved.conditions),
    flown: stallMargins(pattern, conditions),
  };
  if (Math.min(stall.flown.turning ?? 9, stall.flown.straight ?? 9) < 1) {
    return { flown: false, change, reason: 'stalls' };
  }
  const last = track.at(-1)!;
  const differences = planned.keys
    .filter((key) => key.id !== 'aim-point' && key.id !== 'touchdown')
    .map((key) => difference(key, pattern));
  const { along, across, height, time, eas, groundspeed, phase } = last;
  return {
    flown: true,
    change,
    track: track.map((sample) => ({ ...sample, heading: positiveAngle(sample.heading) })),
    keys: pattern.keys,
    end: { along, across, height: height > onGround ? height : 0, time, eas, groundspeed, phase },
    landing: landed(approach, pattern, change, request.runway.heading),
    plannedLanding: figures(planned, undefined, plan.resolved.conditions, plan.asked.pull),
    differences,
    shows: differences.find(canBeSeen),
    stall,
    finalHeight: finalHeightOf(pattern),
    cautions: cautionsOf({
      aircraft: conditions.aircraft,
      runway: request.runway,
      flown,
      track,
      keys: pattern.keys,
      pull: log.pull ?? plan.asked.pull,
      minimums: request.minimums,
    }),
  };
}

/** m. */
const onGround = 1e-3;

function finalHeightOf({ keys, flight: { track } }: FlownPattern): number | undefined {
  const [first] = track;
  return (
    keys.find(({ id }) => id === 'final')?.height ?? (first?.phase === 'final' ? first.height : undefined)
  );
}

function landed(
  { resolved: { conditions }, log }: ChangedApproach,
  pattern: FlownPattern,
  change: FaultChange,
  runwayHeading: number,
): FaultLanding {
  const last = pattern.flight.track.at(-1)!;
  const inFigures = figures(pattern, log, conditions);
  if (log.level === undefined) {
    return last.phase === 'round-out'
      ? { ...inFigures, how: 'struck', sink: last.sink, beyond: 'strike' }
      : { ...inFigures, how: 'no-landing', beyond: 'ground' };
  }
  if (log.dropped) return { ...inFigures, how: 'dropped', drop: last.height, beyond: 'drop' };
  const wind = stillAir();
  conditions.wind(0, wind);
  const side = change.kind === 'touchdown-drift' ? wind.across : 0;
  const way = Math.asin(Math.min(1, Math.max(-1, side / last.groundspeed)));
  const fast = last.eas > conditions.speeds.touchdown + 1e-3;
  const beyond = fast ? 'bounce' : side === 0 ? undefined : 'drift';
  return {
    ...inFigures,
    how: 'touched',
    sink: last.sink,
    side,
    drift: way - (last.heading - runwayHeading),
    beyond,
  };
}

function figures(
  { flight: { track } }: FlownPattern,
  log: LandingLog | undefined,
  { speeds }: Conditions,
  plannedPull?: number,
): LandingFigures {
  const last = track.at(-1)!;
  const begins = track.findLast((sample) => sample.phase === 'final');
  const level = log === undefined ? track.findLast((sample) => sample.phase === 'round-out') : log.level;
  const pull = log === undefined ? plannedPull : log.pull;
  return {
    level: level && { height: level.height, eas: level.eas },
    balloon: level && balloonIn(track),
    holdOff: level && { distance: last.along - level.along, time: last.time - level.time },
    pull,
    pullMargin: pull && begins ? begins.eas / stallSpeedUnder(pull, speeds.stall) : undefined,
  };
}

/** m. A smaller climb than this is none. */
const leastRise = 0.05;

function balloonIn(track: readonly TrackSample[]): LandingFigures['balloon'] {
  const rounding = track.filter(({ phase }) => phase === 'round-out');
  const top = rounding.at(-1);
  if (!top) return undefined;
  const lowest = rounding.reduce((low, sample) => (sample.height < low.height ? sample : low), top);
  const rise = top.height - lowest.height;
  return rise > leastRise ? { rise, time: top.time - lowest.time } : undefined;
}

/** Before the round-out: what comes after is meant to come near the stall. */
function stallMargins({ flight: { track } }: FlownPattern, { speeds }: Conditions): StallMargins {
  let [turning, straight] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { phase, bank, eas } of track) {
    if (phase === 'round-out' || phase === 'hold-off') continue;
    const margin = eas / stallSpeedUnder(loadFactor(bank), speeds.stall);
    if (Math.abs(bank) > 1e-3) turning = Math.min(turning, margin);
    else straight = Math.min(straight, margin);
  }
  const found = (margin: number) => (Number.isFinite(margin) ? margin : undefined);
  return { turning: found(turning), straight: found(straight) };
}

/** m: what the eye can tell at a key, a height and a place on the ground (a judgement of ours, no source). */
const seenHeight = 10;
const seenPlace = 40;

function canBeSeen({ heightThere, along, across }: KeyDifference): boolean {
  return Math.abs(heightThere ?? 0) >= seenHeight || Math.hypot(along ?? 0, across ?? 0) >= seenPlace;
}

function difference(key: KeyPosition, flown: FlownPattern): KeyDifference {
  const own = flown.keys.find(({ id }) => id === key.id);
  const there = heightAbeam(key, flown.flight.track);
  return {
    at: key.id,
    heightThere: there === undefined ? undefined : there - key.height,
    height: own && own.height - key.height,
    along: own && own.along - key.along,
    across: own && own.across - key.across,
    time: own && own.time - key.time,
  };
}

/** On which legs a key's place is passed, and along which axis. */
const passing: Readonly<Partial<Record<KeyId, { on: readonly Phase[]; axis: 'along' | 'across' }>>> = {
  overhead: { on: ['circle'], axis: 'along' },
  'downwind-key': { on: ['downwind'], axis: 'along' },
  'base-turn': { on: ['downwind', 'base-turn'], axis: 'along' },
  'base-key': { on: ['base-turn', 'base', 'final-turn'], axis: 'across' },
  'final-turn': { on: ['base-turn', 'base', 'final-turn'], axis: 'across' },
  final: { on: ['final-turn', 'final'], axis: 'along' },
};

function heightAbeam(key: KeyPosition, track: readonly TrackSample[]): number | undefined {
  const how = passing[key.id];
  if (!how) return undefined;
  const off = (sample: TrackSample) => sample[how.axis] - key[how.axis];
  for (let i = 0; i < track.length; i++) {
    const sample = track[i]!;
    const next = track[i + 1];
    if (
      Math.abs(off(sample)) < 1e-3 &&
      (how.on.includes(sample.phase) || (next && how.on.includes(next.phase)))
    ) {
      return sample.height;
    }
    if (!next || !how.on.includes(next.phase)) continue;
    const [a, b] = [off(sample), off(next)];
    if (a * b < 0) return between(sample, next, a / (a - b)).height;
  }
  return undefined;
}
