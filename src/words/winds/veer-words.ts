import { windTurnsUpTo } from '../../flight/air/wind.ts';
import { formatHeight, formatTurn } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';

/** `20° clockwise up to 1,000 ft`; rad, negative anticlockwise. */
export function veerWords(veer: number, units: PageUnits): string {
  return `${formatTurn(veer)} up to ${formatHeight(windTurnsUpTo, units)}`;
}
