import type { Aircraft } from '../terms/aircraft.ts';
import type { WindCase } from './wind-table.ts';

/** Every wind made of these components that the aircraft may be flown in, and those that are over its limits. m/s. */
export function windsWithin(
  along: readonly number[],
  across: readonly number[],
  { limits }: Pick<Aircraft, 'limits'>,
): { winds: WindCase[]; over: WindCase[] } {
  const all = across.flatMap((crosswind) => along.map((headwind) => ({ headwind, crosswind })));
  const mostTailwind = limits.tailwind ?? Number.POSITIVE_INFINITY;
  const isWithin = ({ headwind, crosswind }: WindCase) =>
    Math.hypot(headwind, crosswind) <= limits.wind + 1e-9 &&
    Math.abs(crosswind) <= limits.crosswind + 1e-9 &&
    -headwind <= mostTailwind + 1e-9;
  return { winds: all.filter(isWithin), over: all.filter((wind) => !isWithin(wind)) };
}

/** Each wind with each veer, the veers of one wind together; a calm has none. */
export function turnedWinds(winds: readonly WindCase[], veers: readonly number[]): WindCase[] {
  return winds.flatMap((wind) => {
    const isCalm = wind.headwind === 0 && wind.crosswind === 0;
    return (isCalm ? [0] : veers).map((veer) => ({ ...wind, veer }));
  });
}
