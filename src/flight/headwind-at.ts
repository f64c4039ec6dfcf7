import type { Conditions } from './conditions.ts';
import type { Drift } from './wind.ts';

/** The wind against the landing direction at a height in m, m/s; negative for a tailwind. */
export function headwindAt(conditions: Conditions, height: number): number {
  const wind: Drift = { along: 0, across: 0 };
  conditions.wind(height, wind);
  return -wind.along;
}
