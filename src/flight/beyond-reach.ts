import type { Conditions } from './conditions.ts';
import { find180, missTurningAtOnce, type Request180 } from './power-off-180.ts';
import { bracketFrom, rootInBracket } from './root.ts';
import type { WindField } from './wind.ts';

/** m. No key position is looked for above this. */
const highestKey = 3000;

/** The lowest height, m, at the downwind key from which the spot is made with the base turn started abeam. */
export function lowestKeyHeight(
  request: Request180,
  conditions: Conditions,
  heading: number,
): number | undefined {
  const miss = (height: number) => missTurningAtOnce({ ...request, height }, conditions, heading);
  const here = miss(request.height);
  if (!(here < 0)) return undefined;
  const bracket = bracketFrom(miss, request.height, here, 50, highestKey);
  return bracket && rootInBracket(miss, bracket, 0.01);
}

/** The share of this wind, 0 to 1, in which the spot can still be made from this height; to a hundredth, on the
 * safe side. Undefined where it cannot be made in still air either. */
export function windShareThatWorks(
  request: Request180,
  conditions: Conditions,
  heading: number,
): number | undefined {
  const made = (hundredths: number) =>
    find180(request, { ...conditions, wind: scaled(conditions.wind, hundredths / 100) }, heading).miss === 0;
  if (!made(0)) return undefined;
  let works = 0;
  let fails = 100;
  while (fails - works > 1) {
    const middle = Math.floor((works + fails) / 2);
    if (made(middle)) works = middle;
    else fails = middle;
  }
  return works / 100;
}

function scaled(wind: WindField, share: number): WindField {
  return (height, out) => {
    wind(height, out);
    out.along *= share;
    out.across *= share;
  };
}
