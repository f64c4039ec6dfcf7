import { type Band, bandOf, type Reaches } from './band.ts';
import type { FinalReach } from './final-reach.ts';
import { fromBase, fromDownwind, guessFrom, inOneTurn, type Place } from './gate-paths.ts';
import type { World } from './world.ts';

/*
 * The edges of the gates by a search over all that their definition allows: a grid, then ever smaller steps about the
 * best of it. SI, rad.
 */

/** A band, and the numbers of the paths that make the spot from its edges. */
export interface Found extends Band {
  readonly lowAt: readonly number[];
  readonly highAt: readonly number[];
}

/** rad: by how much the definition lets base leg be turned. */
const turnedOut = -Math.PI / 4;
const turnedIn = (75 * Math.PI) / 180;

/** The band of a base key: over all angles by which the base leg may be turned. */
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

/** The band of a downwind key: over all base turns begun up to two spacings past it, and all angles of base. */
export function bandAtDownwindKey(
  world: World,
  reach: FinalReach,
  place: Place,
  spacing: number,
  fineness = 1,
): Found | undefined {
  const inTwo = ([past, turn]: readonly number[], reaches: Reaches) =>
    bandOf(
      (height) => fromDownwind(world, place, height, past!, turn!),
      guessFrom(world, place, past!),
      world,
      reaches,
    );
  const ranges = [
    [0, 2 * spacing, 8 * fineness],
    [turnedOut, turnedIn, 12 * fineness],
  ] as const;
  const roomFor = ([past, turn]: readonly number[]) =>
    fromDownwind(world, place, guessFrom(world, place, past!), past!, turn!) !== undefined;
  if (gridOf(ranges).some(roomFor)) return search(ranges, inTwo, reach);
  // Where two turns have no room, one turn on to final.
  const inOne = ([past]: readonly number[], reaches: Reaches) =>
    bandOf(
      (height) => inOneTurn(world, place, height, past!),
      guessFrom(world, place, past!),
      world,
      reaches,
    );
  return search([[0, 2 * spacing, 8 * fineness]], inOne, reach);
}

type Range = readonly [low: number, high: number, parts: number];
type Search = (at: readonly number[], reaches: Reaches) => Band | undefined;

/** Least and greatest of the bands over ranges of one or two numbers. */
function search(ranges: readonly Range[], band: Search, reach: FinalReach): Found | undefined {
  const about = { farthest: reach.aboutFarthest, steepest: reach.aboutSteepest };
  const exact: Reaches = {
    farthest: (height) => reach.farthest(height),
    steepest: (height) => reach.steepest(height),
  };
  const tried = gridOf(ranges).flatMap((at) => {
    const found = band(at, about);
    return found ? [{ at, ...found }] : [];
  });
  const extreme = (sign: 1 | -1, value: (found: Band) => number) => {
    const starts = [...tried].sort((a, b) => sign * (value(a) - value(b))).slice(0, 2);
    const cost = (at: readonly number[]) => {
      const found = band(at, about);
      return found ? sign * value(found) : Number.POSITIVE_INFINITY;
    };
    const ends = starts.flatMap((start) =>
      [descend(ranges, start.at, cost), start.at].flatMap((at) => {
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

/** Steps each way along each range, and both ways at once, halved when none is better. */
function descend(
  ranges: readonly Range[],
  from: readonly number[],
  cost: (at: readonly number[]) => number,
): readonly number[] {
  let best = from;
  let least = cost(from);
  const directions = ranges.length === 1 ? [[1], [-1]] : allDirections;
  for (let share = 1; share > 1 / 200; share /= 2) {
    for (let better = true; better; ) {
      better = false;
      for (const direction of directions) {
        const at = ranges.map(([low, high, parts], i) =>
          Math.min(high, Math.max(low, best[i]! + (direction[i]! * share * (high - low)) / parts)),
        );
        const value = cost(at);
        if (value < least - 1e-3) [best, least, better] = [at, value, true];
      }
    }
  }
  return best;
}

/** Round about, so that a corner of what is allowed is slid along. */
const allDirections = Array.from({ length: 20 }, (_, i) => {
  const angle = (i * Math.PI) / 10;
  return [Math.cos(angle), Math.sin(angle)];
});
