import { stillAir } from '../air/wind.ts';
import type { Conditions } from './conditions.ts';

/** The wind against the landing direction at a height in m, m/s; negative for a tailwind. */
export function headwindAt(conditions: Conditions, height: number): number {
  const wind = stillAir();
  conditions.wind(height, wind);
  return -wind.along;
}
