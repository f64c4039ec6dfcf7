/**
 * Sine, cosine and powers that every JavaScript engine computes to the same last digit, so that a plan made in a
 * browser is the plan printed on paper. Engines differ in `Math.sin`, `Math.cos` and `**` (except for squares); they
 * were found to agree in `Math.tan`, `Math.exp` and `Math.log`, from which these are made.
 */

/** Sine of an angle in rad, through the tangent of its half: 2t/(1 + t^2). */
export function sine(angle: number): number {
  const t = Math.tan(angle / 2);
  return (2 * t) / (1 + t * t);
}

/** Cosine of an angle in rad, through the tangent of its half: (1 - t^2)/(1 + t^2). */
export function cosine(angle: number): number {
  const t = Math.tan(angle / 2);
  return (1 - t * t) / (1 + t * t);
}

/** A positive number to any power. */
export function power(base: number, exponent: number): number {
  return Math.exp(exponent * Math.log(base));
}
