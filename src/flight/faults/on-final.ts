import { standardGravity } from '../air/constants.ts';
import { dragOverWeight, sinOfGlide } from '../aircraft/glide.ts';
import { Flight } from '../flying/fly.ts';
import { headwindAt } from '../flying/headwind-at.ts';
import { between } from '../flying/keys.ts';
import { type LandingLog, landingLegs } from '../flying/landing-legs.ts';
import { ALONG, EAS, glideAlongLine, HEIGHT, speedHeldDownTo, stateSize, TIME } from '../flying/motions.ts';
import { finalLegs } from '../flying/pattern-legs.ts';
import type { Leg } from '../flying/procedure.ts';
import { Integrator } from '../numerics/integrator.ts';
import { seekRoot } from '../numerics/root.ts';
import { finalLine, steepUntil } from '../plan/final-band.ts';
import type { TrackSample } from '../terms/plan.ts';
import type { FaultPlan } from './fault-plan.ts';

/** A place on final, m. */
export interface OnFinal {
  readonly along: number;
  readonly height: number;
}

/** Where a flight is first wings level on final; undefined where it does not come to final. */
export function beginsFinal(track: readonly TrackSample[]): TrackSample | undefined {
  return onFinal(track)[0];
}

/**
 * How far below the planned final a place is, m; negative above it. Before the place where the planned final begins, its
 * path is carried on backwards at the steady glide of the approach speed. Undefined where the plan has no final.
 */
export function belowThePath(plan: FaultPlan, { along, height }: OnFinal): number | undefined {
  const final = onFinal(plan.pattern.flight.track);
  const [start] = final;
  const last = final.at(-1);
  if (!start || !last || along > last.along) return undefined;
  if (along <= start.along) return start.height + (start.along - along) * slopeOfFinal(plan) - height;
  const after = final.findIndex((sample) => sample.along >= along);
  const [before, next] = [final[after - 1]!, final[after]!];
  const share = (along - before.along) / (next.along - before.along);
  return between(before, next, share).height - height;
}

/** Height lost over distance made good, at the approach speed where final begins. */
function slopeOfFinal(plan: FaultPlan): number {
  const { conditions } = plan.resolved;
  const height = onFinal(plan.pattern.flight.track)[0]?.height ?? 0;
  const eas = conditions.speeds.approach;
  const sin = sinOfGlide(conditions.polar, eas, 1);
  const tas = eas * conditions.tasOverEas(height);
  return (tas * sin) / (tas * Math.sqrt(1 - sin * sin) - headwindAt(conditions, height));
}

/** Low on final: level flight, with power, back to the planned path. m, s. */
export interface BackToThePath {
  readonly distance: number;
  readonly seconds: number;
  /** Where the path is met. */
  readonly along: number;
  readonly height: number;
}

/**
 * How far level flight at the approach speed leads from a place on final, below the planned path, to that path; `below`
 * as a number is so many m under where the planned final begins. Undefined where it is met only below the height at
 * which the steep part of an approach must be over (150 ft): there is no final left to fly then. How fast the aircraft
 * climbs is not in its data, so no climb is reckoned with.
 */
export function backToThePath(plan: FaultPlan, below: number | OnFinal): BackToThePath | undefined {
  const { conditions } = plan.resolved;
  const final = onFinal(plan.pattern.flight.track);
  const [start] = final;
  if (!start) return undefined;
  const from = typeof below === 'number' ? { along: start.along, height: start.height - below } : below;
  const { height } = from;
  if (height < steepUntil) return undefined;
  const along = whereAt(height, final, slopeOfFinal(plan));
  if (along === undefined) return undefined;
  const tas = conditions.speeds.approach * conditions.tasOverEas(height);
  const distance = along - from.along;
  return { distance, seconds: distance / (tas - headwindAt(conditions, height)), along, height };
}

/** Where the planned final, carried on backwards, is at a height. */
function whereAt(height: number, final: readonly TrackSample[], slope: number): number | undefined {
  const [start] = final;
  if (start && height >= start.height) return start.along - (height - start.height) / slope;
  const after = final.findIndex((sample) => sample.height <= height);
  const [before, next] = [final[after - 1], final[after]];
  if (!before || !next) return undefined;
  return between(before, next, (before.height - height) / (before.height - next.height)).along;
}

/**
 * High on final: the most, in m above the planned path, that the steep approach flown from a place to 150 ft still loses;
 * the place is where the planned final begins, or another along it with the speed there. Found by flying. Undefined for an
 * aircraft without a steep approach, and where it would begin at 150 ft or below.
 */
export function steepApproachLoses(
  plan: FaultPlan,
  from?: Pick<TrackSample, 'along' | 'eas'>,
): number | undefined {
  const { conditions } = plan.resolved;
  const { steep } = conditions;
  const start = from ?? beginsFinal(plan.pattern.flight.track);
  if (!steep || !start) return undefined;
  const path = belowThePath(plan, { along: start.along, height: 0 });
  if (path === undefined) return undefined;
  const legs: Leg[] = [
    { ...finalLine(steepUntil, steep.speed), steep: true },
    ...finalLegs(conditions, plan.asked.pull),
  ];
  const miss = (above: number) => {
    const flight = new Flight(conditions, 0, 'search');
    flight.begin({ along: start.along, across: 0, eas: start.eas, height: path + above }, legs[0]!);
    for (const leg of legs) flight.leg(leg);
    return flight.flyable ? flight.state[ALONG]! : Number.NaN;
  };
  const likely = { guess: 20, slope: conditions.polar.ratio, within: [steepUntil - path, 2000] } as const;
  const sought = seekRoot(miss, likely, 0.01);
  return sought?.found && path + sought.x > steepUntil + 1 ? sought.x : undefined;
}

/** Slow on final. Speeds as ratios, sinks in m/s, heights in m, time in s. */
export interface SlowOnFinal {
  readonly stallMargin: number;
  /** Steady sink at the slow speed and at the approach speed. */
  readonly sink: number;
  readonly plannedSink: number;
  /** True below the speed of least drag: slower costs more drag. */
  readonly behindTheDragCurve: boolean;
  /** True below the speed of least sink: slower sinks faster too. */
  readonly slowerSinksFaster: boolean;
  /** Height that the missing speed is worth, (v2^2 - v1^2)/2g. */
  readonly energyHeight: number;
  /** Height and time that getting the approach speed back takes, the sink meanwhile included. */
  readonly height: number;
  readonly time: number;
}

/** What flying final at `eas` m/s instead of the approach speed costs, and what the way back takes; near the ground's air. */
export function slowOnFinal(plan: FaultPlan, eas: number): SlowOnFinal {
  const { conditions } = plan.resolved;
  const { polar, speeds, tasOverEas } = conditions;
  const factor = tasOverEas(0);
  const sink = (speed: number) => speed * factor * sinOfGlide(polar, speed, 1);
  const state = new Float64Array(stateSize);
  // Anywhere on final: the height counts from nought, and the air hardly changes in so little.
  state[EAS] = eas;
  const wanted = (now: Float64Array) => speeds.approach - now[EAS]!;
  if (eas < speeds.approach)
    new Integrator(stateSize).run(glideAlongLine(conditions, 0, wanted, 'faster'), state, false);
  return {
    stallMargin: eas / speeds.stall,
    sink: sink(eas),
    plannedSink: sink(speeds.approach),
    behindTheDragCurve: dragOverWeight(polar, eas * 0.999, 1) > dragOverWeight(polar, eas, 1),
    slowerSinksFaster: sink(eas * 0.999) > sink(eas),
    energyHeight: (factor ** 2 * (speeds.approach ** 2 - eas ** 2)) / (2 * standardGravity),
    height: -state[HEIGHT]!,
    time: state[TIME]!,
  };
}

/** A landing from the round-out height with the path right and the speed not. m, s, m/s EAS. */
export interface Floated {
  /** Over the ground from the height of the round-out to the touchdown, and of it the hold-off. */
  readonly landing: number;
  readonly holdOff: number;
  readonly time: number;
  readonly pull: number;
}

/**
 * The landing of an aircraft that flies final at `eas` m/s for as long as an airspeed is held: how far it floats from the
 * height of the round-out on. Undefined where the speed does not last to the ground.
 */
export function floatFrom(plan: FaultPlan, eas: number): Floated | undefined {
  const { conditions } = plan.resolved;
  const { height } = conditions.aircraft.roundOut;
  const log: LandingLog = {};
  const flight = new Flight(conditions, 0, 'honest');
  const [final] = finalLegs(conditions, plan.asked.pull, eas);
  flight.begin({ along: 0, across: 0, height: Math.max(height, speedHeldDownTo), eas }, final!);
  flight.leg(final!);
  const begun = { along: flight.state[ALONG]!, time: flight.time };
  for (const leg of landingLegs({}, plan.asked.pull, log)) flight.leg(leg);
  if (log.level === undefined || log.dropped || log.pull === undefined) return undefined;
  const end = flight.state[ALONG]!;
  return {
    landing: end - begun.along,
    holdOff: end - log.level.along,
    time: flight.time - begun.time,
    pull: log.pull,
  };
}

/** From wings level on final to the round-out. */
function onFinal(track: readonly TrackSample[]): TrackSample[] {
  const first = track.findIndex(({ phase }) => phase === 'final');
  if (first < 0) return [];
  const last = track.findLastIndex(({ phase }) => phase === 'final');
  return track.slice(Math.max(0, first - 1), last + 1);
}
