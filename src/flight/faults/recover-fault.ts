import { standardGravity } from '../air/constants.ts';
import { stillAir } from '../air/wind.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { keyAt } from '../flying/keys.ts';
import { ALONG } from '../flying/motions.ts';
import type { Leg } from '../flying/procedure.ts';
import {
  bestOnFinal,
  finalBand,
  finalLine,
  landingFrom,
  sTurnCovers,
  steepest,
  steepUntil,
} from '../plan/final-band.ts';
import { farthestBaseTurn, fromBaseKey, fromDownwind, inHand, type Search } from '../plan/gates.ts';
import type { FaultChange, FaultFlown, FaultRecovery, RecoveryWay } from '../terms/fault.ts';
import type { Phase, TrackSample } from '../terms/plan.ts';
import { changedApproach } from './changed-approach.ts';
import { passesGateway } from './cut-corner.ts';
import type { MadeOn } from './fault-method.ts';
import type { FaultPlan } from './fault-plan.ts';
import { lastPoint, type Spare } from './last-point.ts';
import { lineUp } from './line-up.ts';
import { isInTheLanding, madeOn } from './list.ts';

/** m. Less height than this is none: a plan that lines up just so high is not to fail by a rounding. */
const asPlanned = 0.1;
/** m. Nearer to the spot than this there is nothing to recover. */
const atTheSpot = 1;

/**
 * The pilot who does notice: for each way of putting a fault right, the last point of the faulty flight from which it
 * still brings the wheels to the spot. Found by flying the way from points of the track: from all before it the way
 * succeeds, a little after it fails.
 * Every turn that puts a flight right is complete at 300 ft, or at the school's own minimum, or higher.
 * Ways for a flight that ends short: cutting the corner to wings level on final where the glide from there
 * reaches the spot (at the best-glide speed; what another speed is worth in height is counted), and on final the best
 * speed for this wind. For one that ends long: the base turn moved out, as far past abeam as twice the spacing; turned out on
 * base by up to 45 degrees, and then whatever final can lose; on final the steep approach, alone or after an S-turn. Where a
 * flight comes to final beside the runway, and for a turn to final with another bank: back to the centreline with a shallow S at the planned bank
 * and no more, and from there the spot. Empty where nothing needs recovering on the way: the landing has its own figures.
 *
 * These ways and the gates agree. What is compared: the places of the flight's own keys from where the fault is made on
 * (the downwind key, where it is the plan's; the base key; the final key, on the centreline), each with its band in the air, the wind and
 * the power of the faulty flight, the height there that the speed is worth at the best glide. Inside a band some way makes the spot from
 * there; outside none does. A metre about an edge is not compared: neither is found more nearly.
 */
export function recoverFault(plan: FaultPlan, fault: FaultFlown): FaultRecovery[] {
  if (isInTheLanding(fault.change)) return [];
  return waysFor(fault, plan).map((by) => recovery(by, plan, fault));
}

/** The ways that answer a fault, in the order in which they come: none from before it is made. */
function waysFor({ end, change }: FaultFlown, { request: { runway } }: FaultPlan): readonly RecoveryWay[] {
  const made = madeOn(change);
  if (made === 'final-turn') return Math.abs(end.across) > atTheSpot ? ['line-up'] : [];
  if (Math.abs(end.along) <= atTheSpot) return [];
  const isBeside = Math.abs(end.across) > runway.width / 2;
  const [onPattern, onFinal]: readonly (readonly RecoveryWay[])[] =
    end.along < 0
      ? [['cut-corner'], ['best-speed']]
      : [
          ['move-out', 'widen'],
          ['s-turn', 'steep-approach'],
        ];
  const ways = [...onPattern!, ...(isBeside ? (['line-up'] as const) : onFinal!)];
  return ways.filter((way) => legsOf[way].includes('final') || (made !== 'final' && comesAfter(way, made)));
}

/** Where a base turn is at fault, it can no longer be moved. */
const comesAfter = (way: RecoveryWay, made: MadeOn) => made !== 'base' || way !== 'move-out';

const legsOf: Readonly<Record<RecoveryWay, readonly Phase[]>> = {
  'cut-corner': ['downwind', 'base-turn', 'base'],
  'best-speed': ['final'],
  'move-out': ['downwind'],
  widen: ['base'],
  's-turn': ['final'],
  'steep-approach': ['final'],
  'line-up': ['final-turn', 'final'],
};

/** The last point of a faulty flight from which a way makes the spot. */
function recovery(by: RecoveryWay, plan: FaultPlan, fault: FaultFlown): FaultRecovery {
  const spare = spareAfter(by, plan, fault.change);
  const points = fromSound(by, recoveredFrom(by, fault), spare);
  if (points.length === 0) return { by, makes: false, reason: 'leg-not-reached' };
  if (!spare) return { by, makes: false, reason: 'no-steep-approach' };
  const last = lastPoint(
    points,
    spare,
    by === 'cut-corner' ? spentBy(points, plan, fault.change) : undefined,
  );
  if (!last) return { by, makes: false, reason: 'too-late' };
  return { by, makes: true, ...placeOf(last.point), lasts: last.lasts };
}

/**
 * A corner may be cut from wings level on base where it may: then it may from all before, for the turn to base is flown on
 * as it was begun. Nothing is asked of a point in it.
 */
export function fromSound(
  by: RecoveryWay,
  points: readonly TrackSample[],
  spare: Spare | undefined,
): readonly TrackSample[] {
  if (by !== 'cut-corner' || !spare) return points;
  const onBase = points.findIndex(isOnBase);
  return onBase > 0 && spare(points[onBase]!) >= 0 ? points.slice(onBase) : points;
}

/** Wings level on base leg. */
const isOnBase = ({ phase, bank }: TrackSample) => phase === 'base' && Math.abs(bank) < 1e-3;

/** The points of a faulty flight at which a way may begin. */
export function recoveredFrom(by: RecoveryWay, { track }: FaultFlown): TrackSample[] {
  return track.filter(({ phase }) => legsOf[by].includes(phase));
}

/**
 * m of height that a second on the way can take from what cutting the corner leaves over, at most: what the flight loses,
 * and what the glide loses on the way back over the ground flown meanwhile, against the wind.
 */
export function spentBy(points: readonly TrackSample[], plan: FaultPlan, change: FaultChange): number {
  const changed = changedApproach(plan, change);
  if ('refused' in changed) return Number.POSITIVE_INFINITY;
  const { conditions } = changed.resolved;
  const { polar } = conditions;
  let [lost, away, back] = [0, 0, Number.POSITIVE_INFINITY];
  const wind = stillAir();
  points.forEach((point, i) => {
    conditions.wind(point.height, wind);
    away = Math.max(away, point.groundspeed);
    back = Math.min(back, polar.speed - Math.hypot(wind.along, wind.across));
    const next = points[i + 1];
    if (next && next.time > point.time) {
      const loss = atBestGlide(point, conditions) - atBestGlide(next, conditions);
      lost = Math.max(lost, loss / (next.time - point.time));
    }
  });
  return back > 0 ? lost + (away / back) * (polar.speed / polar.ratio) : Number.POSITIVE_INFINITY;
}

function placeOf(sample: TrackSample) {
  const { time, along, across, height } = keyAt('final', sample);
  return { time, along, across, height, phase: sample.phase };
}

/**
 * What a way leaves over from a point of the flight, m: height or distance, negative where the spot is not made.
 * Undefined where the aircraft has not the means.
 */
export function spareAfter(by: RecoveryWay, plan: FaultPlan, change: FaultChange): Spare | undefined {
  const changed = changedApproach(plan, change);
  if ('refused' in changed) return undefined;
  const { conditions } = changed.resolved;
  const { asked, request } = plan;
  const landing = landingFrom(asked, conditions);
  /** m past the spot after the steepest final that there is. */
  const missSteepest = (from: Glide) =>
    missFrom(from, from.height > steepUntil ? steepest(asked, conditions) : landing, conditions);
  const { farthest, nearest, straight } = finalBand(asked, conditions);
  /** What final can still reach past the spot, m. */
  const reach = ({ along, height }: Glide) => farthest(height) + along;
  const searchFrom = (guess: number): Search => ({
    asked,
    conditions,
    onFinal: { farthest, nearest, straight },
    guess,
  });
  switch (by) {
    case 'cut-corner': {
      const height = asked.leastFinal;
      const run = missFrom({ along: 0, height, eas: conditions.polar.speed }, landing, conditions);
      // Where the planned final is joined at this height, else as near to the spot as final can make of it, or as far out.
      const runs = [run, nearest(height), farthest(height)].filter((each) => Number.isFinite(each));
      return (point) => {
        const heading = point.heading - request.runway.heading;
        const position = { ...point, heading, height: atBestGlide(point, conditions) };
        let most = Number.NEGATIVE_INFINITY;
        for (const each of runs) {
          const gateway = { along: -each, across: 0, track: 0, enough: height };
          most = Math.max(most, passesGateway(position, gateway, asked.bank, conditions) - height);
          if (most >= 0) return most;
        }
        if (!isOnBase(point)) return most;
        const spare = inHand(fromBaseKey(position, asked, conditions), searchFrom(position.height));
        return spare === null ? most : Math.max(most, spare);
      };
    }
    case 'best-speed':
      return (point) =>
        Math.max(
          missFrom(point, [againstTheWind(point.height, conditions), ...landing], conditions),
          missFrom(point, landing, conditions),
        );
    case 'move-out':
      return (point) => {
        const height = atBestGlide(point, conditions);
        const paths = fromDownwind(keyAt('downwind-key', { ...point, height }), asked, conditions);
        // Past abeam, what is left of twice the planned spacing.
        const most = farthestBaseTurn * asked.spacing;
        const [at] = paths.places;
        if (at > most) return Number.NEGATIVE_INFINITY;
        return inHand({ ...paths, places: [at, most] }, searchFrom(height)) ?? Number.NEGATIVE_INFINITY;
      };
    case 'widen':
      return (point) => {
        const height = atBestGlide(point, conditions);
        const paths = fromBaseKey({ ...point, height }, asked, conditions);
        return inHand(paths, searchFrom(height)) ?? Number.NEGATIVE_INFINITY;
      };
    case 's-turn':
      return (point) => {
        // Complete as high as it must be without what more speed is worth; that is flown on with.
        const covers = sTurnCovers(point.height, straight, asked, conditions);
        if (covers === undefined) return Number.NEGATIVE_INFINITY;
        const height = atBestGlide(point, conditions);
        const over = Math.max(0, height - point.height) * conditions.polar.ratio;
        return Math.min(-point.along - covers - over, reach({ ...point, height }));
      };
    case 'steep-approach': {
      if (!conditions.steep) return undefined;
      return (point) => {
        if (point.height <= steepUntil) return Number.NEGATIVE_INFINITY;
        return Math.min(-missSteepest(point), reach({ ...point, height: atBestGlide(point, conditions) }));
      };
    }
    case 'line-up':
      return (point) => {
        const made = lineUp(point, asked.bank, request.runway.heading, conditions);
        if (!made) return Number.NEGATIVE_INFINITY;
        const best = missFrom(made, [againstTheWind(made.height, conditions), ...landing], conditions);
        return Math.min(
          made.height - asked.leastFinal + asPlanned,
          best + atTheSpot,
          atTheSpot - missSteepest(made),
        );
      };
  }
}

/** Final at the speed that goes farthest against the wind, and not slower than 1.3 times the stall speed. */
function againstTheWind(height: number, conditions: Conditions): Leg {
  return finalLine(steepUntil, bestOnFinal(height, conditions));
}

type Glide = Pick<TrackSample, 'along' | 'height' | 'eas'>;

/** Where the wheels touch, m past the spot, from a point of final. */
function missFrom({ along, height, eas }: Glide, legs: readonly Leg[], conditions: Conditions): number {
  const flight = new Flight(conditions, 0, 'search');
  flight.begin({ along, across: 0, height, eas }, legs[0]!);
  for (const leg of legs) flight.leg(leg);
  return flight.flyable ? flight.state[ALONG]! : Number.NaN;
}

/** The height that the energy of a point is worth at the best-glide speed, (v1^2 - v2^2)/2g; the drag meanwhile is left out. */
function atBestGlide({ height, eas }: TrackSample, { polar, tasOverEas }: Conditions): number {
  return height + ((eas * eas - polar.speed * polar.speed) * tasOverEas(height) ** 2) / (2 * standardGravity);
}
