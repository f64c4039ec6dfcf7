/**
 * `value` to the nearest whole multiple of `step`; halves go away from zero, so that a figure and its mirror image
 * round alike. A half that floating point leaves a hair short still counts as a half. Never negative zero.
 */
export function roundTo(value: number, step: number): number {
  const steps = Math.floor(Math.abs(value) / step + 0.5 + 1e-9);
  return multiple(value < 0 ? -steps : steps, step);
}

/**
 * The next whole multiple of `step` that is not less; a multiple that floating point leaves a hair off counts as
 * itself.
 */
export function roundUpTo(value: number, step: number): number {
  return multiple(Math.ceil(value / step - 1e-6), step);
}

/**
 * The next whole multiple of `step` that is not more; a multiple that floating point leaves a hair off counts as
 * itself.
 */
export function roundDownTo(value: number, step: number): number {
  return multiple(Math.floor(value / step + 1e-6), step);
}

/** Dividing by a whole number of steps per unit keeps 3.1 as 3.1 where multiplying by 0.1 would not. */
function multiple(steps: number, step: number): number {
  if (steps === 0) return 0;
  const perUnit = Math.round(1 / step);
  return Math.abs(perUnit * step - 1) < 1e-9 ? steps / perUnit : steps * step;
}

/** A rounded number as it is printed: real minus (U+2212), comma between thousands from 1,000. */
export function numberText(value: number, step: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be printed as a figure`);
  const rounded = roundTo(value, step);
  const decimals = step < 1 ? Math.round(-Math.log10(step)) : 0;
  const [whole, fraction] = Math.abs(rounded).toFixed(decimals).split('.');
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${rounded < 0 ? '−' : ''}${grouped}${fraction ? `.${fraction}` : ''}`;
}

/** The no-break space that keeps a number and its unit on one line. */
export const noBreakSpace = '\u00a0';

/** `numberText` and its unit. */
export function withUnit(value: number, step: number, unit: string): string {
  return `${numberText(value, step)}${noBreakSpace}${unit}`;
}
