import { noBreakSpace, roundTo } from '../../src/units/rounding.ts';

/**
 * True where the product of the figures as printed rounds to the answer as printed: whoever works it out by hand from
 * the page must get the same figure. `step` is the step of the answer, `per` how many times smaller its unit is.
 */
export function comesOutByHand(factors: readonly string[], answer: string, step: number, per = 1): boolean {
  const product = factors.reduce((result, text) => result * numberIn(text), 1) / per;
  return roundTo(product, step) === numberIn(answer);
}

/** Figures with a sign between them, kept on one line: `549 m × 7.87`. */
export function sumText(sign: '×' | '+' | '−', ...figures: readonly string[]): string {
  return figures.join(`${noBreakSpace}${sign}${noBreakSpace}`);
}

/** The number that a printed figure begins with. */
export function numberIn(text: string): number {
  return Number(/^[\d,.]+/.exec(text)?.[0].replaceAll(',', ''));
}
