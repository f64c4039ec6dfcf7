import {
  metresPerFoot,
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  metresPerSecondPerMph,
} from '../../units/factors.ts';
import type { PageUnits } from './page-units.ts';

const lengths = { ft: metresPerFoot, m: 1 };
const speeds = { kt: metresPerSecondPerKnot, 'km/h': metresPerSecondPerKmh, mph: metresPerSecondPerMph };

/** m: one of a unit of length. */
export function lengthUnitSize(unit: keyof typeof lengths): number {
  return lengths[unit];
}

/** m: one of the unit that heights are printed in. */
export function heightUnitSize({ height }: Pick<PageUnits, 'height'>): number {
  return lengths[height];
}

/** m/s: one of the unit that speeds are printed in. */
export function speedUnitSize({ speed }: Pick<PageUnits, 'speed'>): number {
  return speeds[speed];
}
