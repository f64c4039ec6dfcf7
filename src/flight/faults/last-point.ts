import { between } from '../flying/keys.ts';
import type { TrackSample } from '../terms/plan.ts';

/** m: how nearly the last height is found. */
const heightTolerance = 0.3;
/** s between the places of a flight that are looked at. */
const lookedAt = 1;
/** s. What is left over says something of as long a time at most. */
const longestLeap = 8;
/** rad: how far one place of a track is turned from the next, at most, for a heading between them to mean anything. */
const halfTurn = Math.PI;

/** What is left over from a point, negative where it is not enough. */
export type Spare = (point: TrackSample) => number;

export interface LastPoint {
  readonly point: TrackSample;
  /** True where it is enough to the end. */
  readonly lasts: boolean;
}

/**
 * The last point of a flight, followed from its first, up to which what is left over is enough; undefined where it is
 * not enough at the first. What comes after a failure is not counted on, though a turn may bring the spot back for a moment.
 * `spentBy`: no more than so much of it is spent in a second, so that while there is much of it, places are left out.
 */
export function lastPoint(
  points: readonly TrackSample[],
  spare: Spare,
  spentBy = Number.POSITIVE_INFINITY,
): LastPoint | undefined {
  const looked = everySecond(points);
  const [first] = looked;
  if (!first) return undefined;
  let [at, left] = [0, spare(first)];
  if (!(left >= 0)) return undefined;
  let mayLeap = true;
  while (at < looked.length - 1) {
    const from = looked[at]!;
    const surely = mayLeap ? from.time + Math.min(longestLeap, left / spentBy) : from.time;
    let next = at + 1;
    while (next < looked.length - 1 && looked[next + 1]!.time <= surely) next++;
    const to = looked[next]!;
    const then = spare(to);
    if (then >= 0) [at, left] = [next, then];
    else if (next === at + 1) return { point: edge([from, left], [to, then], spare), lasts: false };
    // More was spent than was held possible: from here on every place is looked at.
    else mayLeap = false;
  }
  return { point: looked[at]!, lasts: true };
}

/** The first, each that lies a second or more after the one before, and the end. */
function everySecond(points: readonly TrackSample[]): TrackSample[] {
  const looked: TrackSample[] = [];
  for (const point of points) {
    if (point.time >= (looked.at(-1)?.time ?? Number.NEGATIVE_INFINITY) + lookedAt) looked.push(point);
  }
  const end = points.at(-1);
  if (end && looked.at(-1) !== end) looked.push(end);
  return looked;
}

type Known = readonly [point: TrackSample, spare: number];

/** Between a point with enough and a later one without. */
function edge(good: Known, bad: Known, spare: Spare): TrackSample {
  let [[from, over], [to, under]] = [good, bad];
  let width = Number.POSITIVE_INFINITY;
  for (;;) {
    const height = Math.abs(from.height - to.height);
    if (height <= heightTolerance || to.time - from.time <= 1e-3) return from;
    // Where the line between the two meets nought, and as far past it as makes the tolerance; halved where that is slow.
    const share = over / (over - under);
    const past = (0.4 * heightTolerance) / height;
    const slow = height > width / 2 || !Number.isFinite(share);
    const at = slow ? 0.5 : Math.min(0.95, Math.max(0.05, share < 0.5 ? share + past : share - past));
    width = slow ? Number.POSITIVE_INFINITY : height;
    const middle = part(from, to, at);
    const left = spare(middle);
    if (left >= 0) [from, over] = [middle, left];
    else [to, under] = [middle, left];
  }
}

/** What is flown a share of the way from one sample to the next. */
export function part(a: TrackSample, b: TrackSample, share: number): TrackSample {
  const turn = ((b.heading - a.heading + 3 * halfTurn) % (2 * halfTurn)) - halfTurn;
  return {
    ...between(a, b, share),
    heading: a.heading + share * turn,
    bank: a.bank + share * (b.bank - a.bank),
    eas: a.eas + share * (b.eas - a.eas),
  };
}
