import { approach } from '../approaching.ts';
import { arrivalHeight } from '../arrival.ts';
import type { Conditions } from '../conditions.ts';
import { standardGravity } from '../constants.ts';
import type { FaultChange, FaultFlown, FaultRecovery, RecoveryWay } from '../fault.ts';
import { Flight } from '../fly.ts';
import { eighth, finalLine, fromBase, losingHeight, soundFinal, steepUntil } from '../gates.ts';
import { headwindAt } from '../headwind-at.ts';
import { between, keyAt } from '../keys.ts';
import { ALONG } from '../motions.ts';
import { finalLegs } from '../pattern-legs.ts';
import type { Phase, TrackSample } from '../plan.ts';
import type { Leg } from '../procedure.ts';
import { speedToFly } from '../speed-to-fly.ts';
import { changedApproach, type FaultPlan } from './changed-approach.ts';

/** m. Nearer to the spot than this there is nothing to recover. */
const atTheSpot = 1;
/** m: how nearly the last height is found. */
const heightTolerance = 0.05;
/** s between the places first looked at. */
const lookedAt = 1;
/** rad: how far one place of a track is turned from the next, at most, for a heading between them to mean anything. */
const halfTurn = Math.PI;

/**
 * The pilot who does notice: for each way of putting a fault right, the last point of the faulty flight from which it
 * still brings the wheels to the spot. Found by flying the way from points of the track: from all before it the way
 * succeeds, a little after it fails.
 * Ways for a flight that ends short: cutting the corner to wings level on final at 300 ft where the glide from there
 * reaches the spot (at the best-glide speed; what another speed is worth in height is counted), and on final the best
 * speed against the wind. For one that ends long: turned out on base by 45 degrees, and on final the steep approach,
 * alone or after an S-turn. Empty where nothing needs recovering on the way: the landing has its own figures.
 */
export function recoverFault(plan: FaultPlan, fault: FaultFlown): FaultRecovery[] {
  const short = fault.end.along < -atTheSpot;
  if (!short && fault.end.along <= atTheSpot) return [];
  if (fixedInTheLanding(fault.change)) return [];
  return waysFor(fault).map((by) => lastPoint(by, plan, fault));
}

/** The ways that answer a fault, in the order in which they come: none from before it is made. */
function waysFor({ end, change }: FaultFlown): readonly RecoveryWay[] {
  const ways: readonly RecoveryWay[] =
    end.along < 0 ? ['cut-corner', 'best-speed'] : ['widen', 's-turn', 'steep-approach'];
  return change.kind.startsWith('final') ? ways.filter((way) => legsOf[way].includes('final')) : ways;
}

function fixedInTheLanding({ kind }: FaultChange): boolean {
  return kind.startsWith('round-out') || kind.startsWith('touchdown');
}

const legsOf: Readonly<Record<RecoveryWay, readonly Phase[]>> = {
  'cut-corner': ['downwind', 'base-turn', 'base'],
  'best-speed': ['final'],
  widen: ['base'],
  's-turn': ['final'],
  'steep-approach': ['final'],
};

/** The last point of a faulty flight from which a way makes the spot. */
function lastPoint(by: RecoveryWay, plan: FaultPlan, fault: FaultFlown): FaultRecovery {
  const spare = spareAfter(by, plan, fault.change);
  const points = fault.track.filter(({ phase }) => legsOf[by].includes(phase));
  const [first] = points;
  if (!first)
    return { by, makes: false, reason: 'The flight does not come to the leg on which this is done.' };
  if (!spare) return { by, makes: false, reason: 'The aircraft has no figures for a steep approach.' };
  if (!(spare(first) >= 0)) {
    return { by, makes: false, reason: 'Where this could begin, it no longer makes the spot.' };
  }
  // From the first point on: what follows a failure is not counted on, though a turn may bring the spot back for a moment.
  let good = first;
  while (good !== points.at(-1)) {
    const { time } = good;
    const next = points.find((point) => point.time >= time + lookedAt) ?? points.at(-1)!;
    if (!(spare(next) >= 0)) return { by, makes: true, ...placeOf(edge(good, next, spare)), lasts: false };
    good = next;
  }
  return { by, makes: true, ...placeOf(good), lasts: true };
}

function placeOf(sample: TrackSample) {
  const { time, along, across, height } = keyAt('final', sample);
  return { time, along, across, height, phase: sample.phase };
}

/** Between a point that makes the spot and a later one that does not. */
function edge(good: TrackSample, bad: TrackSample, spare: (point: TrackSample) => number): TrackSample {
  let [from, to] = [good, bad];
  while (Math.abs(from.height - to.height) > heightTolerance && to.time - from.time > 1e-3) {
    const middle = midway(from, to);
    if (spare(middle) >= 0) from = middle;
    else to = middle;
  }
  return from;
}

function midway(a: TrackSample, b: TrackSample): TrackSample {
  const turn = ((b.heading - a.heading + 3 * halfTurn) % (2 * halfTurn)) - halfTurn;
  return { ...between(a, b, 0.5), heading: a.heading + turn / 2, eas: (a.eas + b.eas) / 2 };
}

/**
 * What a way leaves over from a point of the flight, m: height or distance, negative where the spot is not made.
 * Undefined where the aircraft has not the means.
 */
export function spareAfter(
  by: RecoveryWay,
  plan: FaultPlan,
  change: FaultChange,
): ((point: TrackSample) => number) | undefined {
  const changed = changedApproach(plan, change);
  if (typeof changed === 'string') return undefined;
  const { conditions } = changed.resolved;
  const { asked, request } = plan;
  const landing = finalLegs(conditions, asked.pull);
  switch (by) {
    case 'cut-corner': {
      const height = Math.min(
        soundFinal,
        plan.pattern.keys.find(({ id }) => id === 'final')?.height ?? soundFinal,
      );
      const run = missFrom({ along: 0, height, eas: conditions.polar.speed }, landing, conditions);
      const gateway = { along: -run, across: 0, track: 0 };
      return (point) => {
        const heading = point.heading - request.runway.heading;
        const position = { ...point, heading, height: atBestGlide(point, conditions) };
        return (
          (arrivalHeight(position, gateway, asked.bank, conditions) ?? Number.NEGATIVE_INFINITY) - height
        );
      };
    }
    case 'best-speed':
      return (point) => {
        const headwind = headwindAt(conditions, point.height / 2);
        const best = speedToFly(conditions.polar, headwind, conditions.tasOverEas(point.height / 2));
        const eas = Math.max(best, 1.3 * conditions.speeds.stall);
        return missFrom(point, [finalLine(steepUntil, eas), ...landing], conditions);
      };
    case 'widen':
      return (point) => {
        const key = keyAt('base-key', point);
        const path = approach(fromBase(key, point.height, -eighth, asked, conditions), conditions);
        return path?.sound ? -path.miss : Number.NEGATIVE_INFINITY;
      };
    case 's-turn':
      return (point) => {
        const start = { along: point.along, across: 0, height: point.height, eas: conditions.polar.speed };
        const path = { start, stages: [{ before: [] }], after: landing };
        const flown = [asked.side, asked.side === 1 ? -1 : 1].map((side) =>
          approach(losingHeight(path, side as 1 | -1, asked, conditions), conditions),
        );
        const sound = flown.filter((each) => each?.sound);
        return Math.max(Number.NEGATIVE_INFINITY, ...sound.map((each) => -each!.miss));
      };
    case 'steep-approach': {
      const { steep } = conditions;
      if (!steep) return undefined;
      const descent: Leg[] = [{ ...finalLine(steepUntil, steep.speed), steep: true }, ...landing];
      return (point) =>
        point.height > steepUntil ? -missFrom(point, descent, conditions) : Number.NEGATIVE_INFINITY;
    }
  }
}

/** Where the wheels touch, m past the spot, from a point of final. */
function missFrom(
  { along, height, eas }: Pick<TrackSample, 'along' | 'height' | 'eas'>,
  legs: readonly Leg[],
  conditions: Conditions,
): number {
  const flight = new Flight(conditions, 0, 'search');
  flight.begin({ along, across: 0, height, eas }, legs[0]!);
  for (const leg of legs) flight.leg(leg);
  return flight.flyable ? flight.state[ALONG]! : Number.NaN;
}

/** The height that the energy of a point is worth at the best-glide speed, (v1^2 - v2^2)/2g; the drag meanwhile is left out. */
function atBestGlide({ height, eas }: TrackSample, { polar, tasOverEas }: Conditions): number {
  return height + ((eas * eas - polar.speed * polar.speed) * tasOverEas(height) ** 2) / (2 * standardGravity);
}
