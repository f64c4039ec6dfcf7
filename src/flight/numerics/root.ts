/** Tries are limited; a function that stops giving numbers (NaN) ends the search at once. */
const mostTries = 60;

/**
 * A root of `f` inside a bracket, to `tolerance` in the value of `f`: false position with Illinois weighting, which
 * keeps the bracket and is superlinear on smooth functions (Dowell and Jarratt, BIT 11, 1971). Undefined where `f`
 * does not change sign over the bracket, is not finite, or does not get within the tolerance.
 */
export function rootInBracket(
  f: (x: number) => number,
  [from, to]: readonly [low: number, high: number],
  tolerance: number,
): number | undefined {
  const atFrom = f(from);
  if (Math.abs(atFrom) <= tolerance) return from;
  const atTo = f(to);
  if (Math.abs(atTo) <= tolerance) return to;
  return narrow(f, { low: from, high: to, atLow: atFrom, atHigh: atTo }, tolerance)?.x;
}

interface Bracket {
  low: number;
  high: number;
  atLow: number;
  atHigh: number;
}

function narrow(
  f: (x: number) => number,
  bracket: Bracket,
  tolerance: number,
): { x: number; y: number } | undefined {
  let { low, high, atLow, atHigh } = bracket;
  if (!(atLow * atHigh < 0)) return undefined;
  for (let tries = 0; tries < mostTries; tries++) {
    const x = (low * atHigh - high * atLow) / (atHigh - atLow);
    const y = f(x);
    if (!Number.isFinite(y)) return undefined;
    if (Math.abs(y) <= tolerance) return { x, y };
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

/** A root near a good guess, by the secant method from a known slope; undefined where it is not reached. */
export function rootNear(
  f: (x: number) => number,
  guess: number,
  slope: number,
  tolerance: number,
): number | undefined {
  let x0 = guess;
  let y0 = f(x0);
  if (Math.abs(y0) <= tolerance) return x0;
  let x1 = x0 - y0 / slope;
  for (let tries = 0; tries < 25; tries++) {
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

/** What is known of a root before it is sought. */
export interface Whereabouts {
  readonly guess: number;
  /** By how much the value changes with the number, about. */
  readonly slope: number;
  /** It is not looked for outside of these. */
  readonly within: readonly [low: number, high: number];
}

/** The result of a search along a line of values. */
export interface RootFound {
  readonly x: number;
  /** `f(x)`: within the tolerance where the root was found; the value at the nearer end where there is no root. */
  readonly y: number;
  readonly found: boolean;
}

/**
 * Seeks a root of a monotone function from a guess and a known rough slope: secant steps
 * while they stay inside, a bracket as soon as there is one. Where the root lies beyond an end, it returns that end and its value.
 * Undefined where `f` is not finite on the way.
 */
export function seekRoot(
  f: (x: number) => number,
  { guess, slope, within: [low, high] }: Whereabouts,
  tolerance: number,
): RootFound | undefined {
  const inside = (x: number) => Math.min(high, Math.max(low, x));
  let x0 = inside(guess);
  let y0 = f(x0);
  if (Math.abs(y0) <= tolerance) return { x: x0, y: y0, found: true };
  let x1 = inside(x0 - y0 / slope);
  // From an end of the range there is nowhere to go outward; a rough slope may still wrongly point there.
  if (x1 === x0) return Number.isFinite(y0) ? { x: x0, y: y0, found: false } : undefined;
  for (let tries = 0; tries < mostTries; tries++) {
    const y1 = f(x1);
    if (!Number.isFinite(y1)) return undefined;
    if (Math.abs(y1) <= tolerance) return { x: x1, y: y1, found: true };
    if (y0 * y1 < 0) {
      const root = narrow(f, { low: x0, high: x1, atLow: y0, atHigh: y1 }, tolerance);
      return root && { ...root, found: true };
    }
    const step = x1 - (y1 * (x1 - x0)) / (y1 - y0);
    const next = inside(Number.isFinite(step) && (step - x1) * (x1 - x0) > 0 ? step : x1 + 2 * (x1 - x0));
    if (next === x1) return { x: x1, y: y1, found: false };
    x0 = x1;
    y0 = y1;
    x1 = next;
  }
  return undefined;
}
