/** Round numbers for scales and axes. */
const mantissas = [1, 2, 2.5, 5] as const;

/**
 * Scales in growing order of the number under the bar: 1:`from` or the next round one, and on to a million.
 * A round scale is 1, 2, 2.5 or 5 times a power of ten.
 */
export function* roundScales(from = 500): Generator<number> {
  for (let power = 1; power <= 1e6; power *= 10) {
    for (const mantissa of mantissas) {
      const scale = mantissa * power;
      if (Number.isInteger(scale) && scale >= from) yield scale;
    }
  }
}

/** The largest of 1, 2 or 5 times a power of ten that is not above `value`; `value` > 0. */
export function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const mantissa = value / power;
  // Powers of ten are not exact below 1: 0.1 / 0.1 may come out a hair under its mantissa.
  return (mantissa >= 5 - 1e-9 ? 5 : mantissa >= 2 - 1e-9 ? 2 : 1) * power;
}

/** Multiples of a round step from 0 to `end`, as few as possible with the step at or above `end / most`. */
export function niceTicks(end: number, most: number): { readonly step: number; readonly ticks: number[] } {
  const least = end / most;
  let step = roundBelow(least);
  if (step < least * (1 - 1e-9)) step *= nextFactor(step);
  const ticks: number[] = [];
  for (let index = 0; index * step <= end + 1e-9; index += 1) ticks.push(index * step);
  return { step, ticks };
}

/** From 1 to 2, from 2 to 5, from 5 to 10. */
function nextFactor(step: number): number {
  const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
  return Math.abs(mantissa - 2) < 1e-6 ? 2.5 : 2;
}
