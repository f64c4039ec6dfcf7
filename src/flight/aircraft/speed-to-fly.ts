import { leastBetween } from '../numerics/golden-section.ts';
import { type Polar, sinOfGlide } from './glide.ts';

/** Multiples of the best-glide speed between which the speed to fly is looked for: from minimum sink to a steep dive. */
const slowest = 0.75;
const fastest = 2;

/**
 * The speed, m/s EAS, that goes farthest over the ground against a headwind (m/s, negative for a tailwind): the
 * largest (V cos g - headwind)/(V sin g), by golden section. `tasOverEas` belongs to the height. In a headwind as
 * strong as the fastest glide nothing goes forward, and the fastest is returned.
 */
export function speedToFly(polar: Polar, headwind: number, tasOverEas: number): number {
  const ratio = (eas: number) => groundRatio(polar, eas, headwind, tasOverEas);
  const range = [slowest * polar.speed, fastest * polar.speed] as const;
  return leastBetween((eas) => -ratio(eas), range, 1e-6 * polar.speed);
}

/** Distance over the ground for each unit of height lost, at a speed against a headwind. */
export function groundRatio(polar: Polar, eas: number, headwind: number, tasOverEas: number): number {
  const sin = sinOfGlide(polar, eas, 1);
  const tas = eas * tasOverEas;
  return (tas * Math.sqrt(Math.max(0, 1 - sin * sin)) - headwind) / (tas * sin);
}
