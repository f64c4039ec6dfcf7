import { type Polar, sinOfGlide } from './glide.ts';

/** Best-glide speeds between which the speed to fly is looked for: from minimum sink to a steep dive. */
const slowest = 0.75;
const fastest = 2;
const goldenShare = (Math.sqrt(5) - 1) / 2;

/**
 * The speed, m/s EAS, that goes farthest over the ground against a headwind (m/s, negative for a tailwind): the largest
 * (V cos g - headwind)/(V sin g), by golden section. `tasOverEas` belongs to the height. With a headwind as strong as the
 * fastest glide nothing goes forward, and the fastest is returned.
 */
export function speedToFly(polar: Polar, headwind: number, tasOverEas: number): number {
  let low = slowest * polar.speed;
  let high = fastest * polar.speed;
  const ratio = (eas: number) => groundRatio(polar, eas, headwind, tasOverEas);
  let [a, b] = [high - goldenShare * (high - low), low + goldenShare * (high - low)];
  let [atA, atB] = [ratio(a), ratio(b)];
  while (high - low > 1e-6 * polar.speed) {
    if (atA > atB) {
      high = b;
      [b, atB] = [a, atA];
      a = high - goldenShare * (high - low);
      atA = ratio(a);
    } else {
      low = a;
      [a, atA] = [b, atB];
      b = low + goldenShare * (high - low);
      atB = ratio(b);
    }
  }
  return (low + high) / 2;
}

/** Distance over the ground for height lost, at a speed against a headwind. */
export function groundRatio(polar: Polar, eas: number, headwind: number, tasOverEas: number): number {
  const sin = sinOfGlide(polar, eas, 1);
  const tas = eas * tasOverEas;
  return (tas * Math.sqrt(Math.max(0, 1 - sin * sin)) - headwind) / (tas * sin);
}
