import { noBreakSpace, roundTo } from '../../src/units/rounding.ts';

/**
 * True where the product of figures as they are printed rounds to the answer as it is printed: who works it out by hand
 * from the page must come to the same figure. `step` is that of the answer, `per` what its unit is smaller by.
 */
export function comesOutByHand(factors: readonly string[], answer: string, step: number, per = 1): boolean {
  const product = factors.reduce((result, text) => result * numberIn(text), 1) / per;
  return roundTo(product, step) === numberIn(answer);
}

/** Figures with a sign between, which no line parts: `549 m × 7.87`. */
export function sumText(sign: '×' | '+' | '−', ...figures: readonly string[]): string {
  return figures.join(`${noBreakSpace}${sign}${noBreakSpace}`);
}

/** The number that a printed figure begins with. */
export function numberIn(text: string): number {
  return Number(/^[\d,.]+/.exec(text)?.[0].replaceAll(',', ''));
}
