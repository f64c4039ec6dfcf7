import { roundTo } from '../../src/units/rounding.ts';
import { distanceStep, heightStep, speedStep } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';

// Given figures are whole numbers of the page's own unit, so that what is printed is what was computed with.

export function oneOf<T>(items: readonly T[], random: () => number): T {
  return items[Math.floor(random() * items.length)]!;
}

/** m/s: a whole number of the page's unit between two speeds, ends included; undefined where there is none between them. */
export function drawSpeed(
  from: number,
  to: number,
  units: PageUnits,
  random: () => number,
): number | undefined {
  return drawWhole(from, to, speedStep(units), random);
}

/** m: a multiple of 10 ft or of 5 m, times `coarse`, between two heights; undefined where there is none between them. */
export function drawHeight(
  [from, to]: readonly [from: number, to: number],
  units: PageUnits,
  random: () => number,
  coarse = 1,
): number | undefined {
  return drawWhole(from, to, heightStep(units) * coarse, random);
}

/** m: a height as the page prints it. */
export function printedHeight(metres: number, units: PageUnits): number {
  return roundTo(metres, heightStep(units));
}

/** m: a distance as the page prints it. */
export function printedDistance(metres: number, units: PageUnits): number {
  return roundTo(metres, distanceStep(units));
}

function drawWhole(from: number, to: number, step: number, random: () => number): number | undefined {
  const low = Math.ceil(from / step - 1e-9);
  const high = Math.floor(to / step + 1e-9);
  return low > high ? undefined : step * (low + Math.floor(random() * (high - low + 1)));
}
