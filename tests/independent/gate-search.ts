import { type Band, bandOf, type Reaches } from './band.ts';
import type { FinalReach } from './final-reach.ts';
import { fromBase, fromDownwind, guessFrom, inOneTurn, type Place } from './gate-paths.ts';
import type { World } from './world.ts';

/*
 * The edges of the gates by a search over everything that their definition allows: a grid, then smaller and smaller
 * steps about the best of it. SI, rad.
 */

/** A band, and the numbers of the paths that make the spot from its edges. */
export interface Found extends Band {
  readonly lowAt: readonly number[];
  readonly highAt: readonly number[];
}

/** rad: how far the definition lets base leg be turned. */
const turnedOut = -Math.PI / 4;
const turnedIn = (75 * Math.PI) / 180;

/** The band of a base key: over all angles that the base leg may be turned by. */
export function bandAtBaseKey(
  world: World,
  reach: FinalReach,
  place: Place,
  fineness = 1,
): Found | undefined {
  const band = (turn: number, reaches: Reaches) =>
    bandOf((height) => fromBase(world, place, height, turn), guessFrom(world, place, 0), world, reaches);
  return search([[turnedOut, turnedIn, 16 * fineness]], ([turn], reaches) => band(turn!, reaches), reach);
}

/**
 * The band of a downwind key: over all base turns begun up to two spacings past it, and all angles of base; one turn on to
 * final where two, on the planned base track, have no room.
 */
export function bandAtDownwindKey(
  world: World,
  reach: FinalReach,
  place: Place,
  spacing: number,
  fineness = 1,
): Found | undefined {
  const guess = (past: number) => guessFrom(world, place, past);
  const pastAbeam = [0, 2 * spacing, 8 * fineness] as const;
  const turned = [turnedOut, turnedIn, 12 * fineness] as const;
  const inTwo: Search = ([past, turn], reaches) =>
    bandOf((height) => fromDownwind(world, place, height, past!, turn!), guess(past!), world, reaches);
  const inOne: Search = ([past], reaches) =>
    bandOf(
      (height) =>
        fromDownwind(world, place, height, past!, 0) ? undefined : inOneTurn(world, place, height, past!),
      guess(past!),
      world,
      reaches,
    );
  const two = search([pastAbeam, turned], inTwo, reach);
  const one = search([pastAbeam], inOne, reach);
  if (!two || !one) return two ?? one;
  const [lowest, highest] = [one.low < two.low ? one : two, one.high > two.high ? one : two];
  return { low: lowest.low, lowAt: lowest.lowAt, high: highest.high, highAt: highest.highAt };
}

type Range = readonly [low: number, high: number, parts: number];
type Search = (at: readonly number[], reaches: Reaches) => Band | undefined;

/** The least and the greatest of the bands over ranges of one or two numbers. */
function search(ranges: readonly Range[], band: Search, reach: FinalReach): Found | undefined {
  const about = { farthest: reach.aboutFarthest, steepest: reach.aboutSteepest, slack: 0.3 };
  // What the first only just allows, these allow.
  const exact = { farthest: reach.farthest, steepest: reach.steepest, slack: 0.6 };
  const tried = gridOf(ranges).flatMap((at) => {
    const found = band(at, about);
    return found ? [{ at, ...found }] : [];
  });
  const extreme = (sign: 1 | -1, value: (found: Band) => number) => {
    const cost = (at: readonly number[]) => {
      const found = band(at, about);
      return found ? sign * value(found) : Number.POSITIVE_INFINITY;
    };
    const order = [...tried].sort((a, b) => sign * (value(a) - value(b)));
    const first = order[0];
    // Another one to begin from, with another last number.
    const second = order.find(({ at }) => at.at(-1) !== first?.at.at(-1));
    const ends = [first, second].flatMap((start) =>
      (start ? [descend(ranges, start.at, cost), start.at] : []).flatMap((at) => {
        const found = band(at, exact);
        return found ? [{ at, height: value(found) }] : [];
      }),
    );
    return ends.sort((a, b) => sign * (a.height - b.height))[0];
  };
  const low = extreme(1, (found) => found.low);
  const high = extreme(-1, (found) => found.high);
  return low && high && { low: low.height, high: high.height, lowAt: low.at, highAt: high.at };
}

function gridOf(ranges: readonly Range[]): number[][] {
  return ranges.reduce<number[][]>(
    (grid, [low, high, parts]) =>
      grid.flatMap((at) =>
        Array.from({ length: parts + 1 }, (_, i) => [...at, low + ((high - low) * i) / parts]),
      ),
    [[]],
  );
}

type Cost = (at: readonly number[]) => number;

/**
 * The place of least cost: steps each way along the last range, halved when none is better, and at each of them the
 * best along the range before it. That way a bound that runs across both is followed.
 */
function descend(ranges: readonly Range[], from: readonly number[], cost: Cost): readonly number[] {
  const [range] = ranges.slice(-1);
  const [low, high, parts] = range!;
  const before = ranges.slice(0, -1);
  const at = (last: number, start: readonly number[]): readonly number[] =>
    before.length === 0 ? [last] : [...descend(before, start, (first) => cost([...first, last])), last];
  let best = at(from.at(-1)!, from.slice(0, -1));
  let least = cost(best);
  for (let step = (high - low) / parts; step > (high - low) / 2000; step /= 2) {
    for (const way of [-step, step]) {
      const last = Math.min(high, Math.max(low, best.at(-1)! + way));
      if (last === best.at(-1)) continue;
      const tried = at(last, best.slice(0, -1));
      const value = cost(tried);
      if (value < least - 1e-3) [best, least] = [tried, value];
    }
  }
  return best;
}
