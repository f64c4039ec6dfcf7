/** A bracket [low, high] in which a function changes sign, and the values at its ends. */
export interface Bracket {
  readonly low: number;
  readonly high: number;
  readonly atLow: number;
  readonly atHigh: number;
}

/** Tries are bounded: a function that is no function any more (not a number) ends the search at once. */
const mostTries = 60;

/**
 * A root of `f` inside a bracket, to `tolerance` in the value of `f`: false position with Illinois weighting, which
 * keeps the bracket and is superlinear on smooth functions (Dowell and Jarratt, BIT 11, 1971).
 * Undefined where `f` is not finite or does not come within the tolerance.
 */
export function rootInBracket(
  f: (x: number) => number,
  bracket: Bracket,
  tolerance: number,
): number | undefined {
  let { low, high, atLow, atHigh } = bracket;
  if (Math.abs(atLow) <= tolerance) return low;
  if (Math.abs(atHigh) <= tolerance) return high;
  if (!(atLow * atHigh < 0)) return undefined;
  for (let tries = 0; tries < mostTries; tries++) {
    const x = (low * atHigh - high * atLow) / (atHigh - atLow);
    const y = f(x);
    if (!Number.isFinite(y)) return undefined;
    if (Math.abs(y) <= tolerance) return x;
    if (y * atHigh < 0) {
      low = high;
      atLow = atHigh;
    } else {
      atLow /= 2;
    }
    high = x;
    atHigh = y;
  }
  return undefined;
}

/**
 * Doubles the step from `start`, where `f` is `atStart`, until the sign changes or `furthest` is passed.
 * Undefined where it does not change.
 */
export function bracketFrom(
  f: (x: number) => number,
  start: number,
  atStart: number,
  firstStep: number,
  furthest: number,
): Bracket | undefined {
  let low = start;
  let atLow = atStart;
  for (let step = firstStep; ; step *= 2) {
    const high = Math.min(low + step, furthest);
    const atHigh = f(high);
    if (!Number.isFinite(atHigh)) return undefined;
    if (atHigh * atStart <= 0) return { low, high, atLow, atHigh };
    if (high >= furthest) return undefined;
    low = high;
    atLow = atHigh;
  }
}

/** A root near a good guess, by the secant method; undefined where it is not reached within the tolerance. */
export function rootNear(
  f: (x: number) => number,
  guess: number,
  nudge: number,
  tolerance: number,
): number | undefined {
  let x0 = guess;
  let y0 = f(x0);
  let x1 = guess + nudge;
  for (let tries = 0; tries < 25; tries++) {
    if (Math.abs(y0) <= tolerance) return x0;
    const y1 = f(x1);
    if (Math.abs(y1) <= tolerance) return x1;
    const next = x1 - (y1 * (x1 - x0)) / (y1 - y0);
    if (!Number.isFinite(next)) return undefined;
    x0 = x1;
    y0 = y1;
    x1 = next;
  }
  return undefined;
}
