import type { FinalReach } from './final-reach.ts';
import type { Complete } from './gate-paths.ts';
import type { World } from './world.ts';

/** Heights at a key from which the spot can be made; undefined where there are none. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** A path from a key's height; undefined where it cannot be flown. */
export type Path = (height: number) => Complete | undefined;

/** m: heights above this are not looked at; and how exactly heights are found. */
const highest = 4000;
const close = 0.01;

type Reach = (height: number) => number;

/** How far final goes from a height, at the farthest and at the least. */
export interface Reaches {
  readonly farthest: Reach;
  readonly steepest: Reach;
  /** m of ground: where the two are the same, a path meets both, nearly. */
  readonly slack: number;
}

/** The band of heights on final, this far before the spot. */
export function bandOnFinal(reach: FinalReach, before: number): Band | undefined {
  const low = crossing(reach.aboutFarthest, (height) => reach.farthest(height), before);
  const high = crossing(reach.aboutSteepest, (height) => reach.steepest(height), before);
  return low === undefined || high === undefined ? undefined : { low, high };
}

/** The height at which a distance that grows with it is covered: first roughly, by steps up, and then exactly. */
function crossing(about: Reach, exact: Reach, distance: number): number | undefined {
  let below = 2;
  for (let step = 8; below < highest; step *= 1.15) {
    const above = below + step;
    if (about(above) >= distance) {
      const near = halved((x) => about(x) >= distance, below, above);
      return halved((x) => exact(x) >= distance, Math.max(2, near - 5), near + 5);
    }
    below = above;
  }
  return undefined;
}

function halved(passed: (x: number) => boolean, low: number, high: number): number {
  let [a, b] = [low, high];
  while (b - a > close) {
    const middle = (a + b) / 2;
    if (passed(middle)) b = middle;
    else a = middle;
  }
  return b;
}

/** The heights from which a path is complete, high enough, at a place from which final reaches the spot. */
export function bandOf(
  path: Path,
  guess: number,
  { leastFinal, glide }: World,
  reaches: Reaches,
): Band | undefined {
  const leastAtKey = aim(path, guess, leastFinal);
  if (leastAtKey === undefined) return undefined;
  const short = (height: number) => {
    const at = path(height);
    return at ? reaches.farthest(at.height) - at.before : Number.NaN;
  };
  const room = (height: number) => {
    const at = path(height);
    return at ? at.before - reaches.steepest(at.height) : Number.NaN;
  };
  const low = short(leastAtKey) >= 0 ? leastAtKey : growTo(short, leastAtKey, glide.ratio)?.nought;
  if (low === undefined || !(room(low) >= -reaches.slack)) return undefined;
  if (room(low) <= 0) return { low, high: low };
  // No higher than it is flown.
  const { nought, flown } = growTo((height) => -room(height), low, glide.ratio) ?? {};
  return { low, high: nought ?? flown ?? highest };
}

/**
 * The height at the key from which the path is complete at a given height: a metre at the key is about a metre there.
 * It is looked for higher up where the path would end in the ground.
 */
function aim(path: Path, guess: number, wanted: number): number | undefined {
  let height = guess;
  for (let i = 0; i < 40; i++) {
    const at = path(height);
    if (!at || at.height < wanted / 4) {
      height += 40;
      continue;
    }
    const off = wanted - at.height;
    if (Math.abs(off) < close / 2) return height + off;
    height += off;
  }
  return undefined;
}

/**
 * From a height where a growing value is below 0 up to where it is 0, or to where it can first be flown. Undefined
 * where there is neither, up to the highest.
 */
function growTo(value: Reach, from: number, slope: number): { nought?: number; flown?: number } | undefined {
  let [a, fa] = [from, value(from)];
  if (!(fa < 0)) return undefined;
  let [b, fb] = [a, fa];
  // Steps that go a little past it.
  while (fb < 0) {
    [a, fa] = [b, fb];
    b = a + Math.max(1, (-1.2 * fa) / slope);
    if (b > highest) return undefined;
    fb = value(b);
    // From higher up the path cannot be flown.
    for (; Number.isNaN(fb) && b - a > close; fb = value(b)) b = (a + b) / 2;
    if (!(b - a > close)) return { flown: a };
  }
  for (let i = 0; i < 40 && b - a > close && Math.abs(fb) > close; i++) {
    let x = b - (fb * (b - a)) / (fb - fa);
    if (!(x > a && x < b)) x = (a + b) / 2;
    const fx = value(x);
    if (fx >= 0) {
      [b, fb] = [x, fx];
      fa /= 2;
    } else [a, fa] = [x, fx];
  }
  return { nought: b };
}
