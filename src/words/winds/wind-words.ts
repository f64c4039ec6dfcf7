import type { WindCase } from '../../flight/questions/wind-table.ts';
import { formatSpeed } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

/** `headwind 5 kt`, `tailwind 5 kt`, or `nothing` where it rounds to none. m/s, negative for a tailwind. */
export function headwindWords(headwind: number, units: PageUnits, nothing = 'none'): string {
  const size = formatSpeed(Math.abs(headwind), units);
  if (size === formatSpeed(0, units)) return nothing;
  return `${headwind < 0 ? 'tailwind' : 'headwind'} ${size}`;
}

/** `6 kt from the left`, or `nothing` where it rounds to none. m/s, positive from the right. */
export function crosswindWords(crosswind: number, units: PageUnits, nothing = 'none'): string {
  const size = formatSpeed(Math.abs(crosswind), units);
  if (size === formatSpeed(0, units)) return nothing;
  return `${size} from the ${crosswind < 0 ? 'left' : 'right'}`;
}

/** A wind as one name in a sentence. */
export function windWords({ headwind, crosswind }: WindCase, units: PageUnits): string {
  const parts = [headwindWords(headwind, units), crosswindWords(crosswind, units)].filter(
    (part) => part !== 'none',
  );
  return parts.length === 0 ? 'no wind' : parts.join(', ');
}
