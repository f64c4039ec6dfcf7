import type { BestGlide } from './world.ts';

/** Drag over weight at a load factor; `induced` is the share of the induced part that ground effect leaves. */
export function drag({ speed, ratio }: BestGlide, eas: number, load: number, induced = 1): number {
  // tan(gamma0) = 1/E, so cos(gamma0) = E/sqrt(1 + E^2).
  const cosBest = ratio / Math.sqrt(1 + ratio * ratio);
  const u = eas / speed;
  const n = load / (cosBest * u);
  return (cosBest / (2 * ratio)) * (u * u + induced * n * n);
}

/**
 * Sine of the steady glide angle at a bank: sin = a + b (1 - sin^2)/cos^2(bank), the positive root written so that
 * nothing is subtracted.
 */
export function sinGlide(polar: BestGlide, eas: number, bank: number): number {
  const a = drag(polar, eas, 0);
  const cosBank = Math.cos(bank);
  const q = (drag(polar, eas, 1) - a) / (cosBank * cosBank);
  return (2 * (a + q)) / (1 + Math.sqrt(1 + 4 * q * (a + q)));
}

/** FAA-H-8083-25: what ground effect removes of the induced drag with the wing this many spans up. */
const published = [
  [0.1, 0.476],
  [0.25, 0.235],
  [1, 0.014],
] as const;
const nodes = published.map(([spans, taken]) => [Math.log(spans), Math.log(-Math.log(taken))] as const);

/** What is left of the induced drag: the parabola through the three published values, on logarithms. */
export function inducedLeft(spans: number): number {
  const x = Math.log(Math.max(spans, 0.01));
  let y = 0;
  for (const [xi, yi] of nodes) {
    let weight = yi;
    for (const [xj] of nodes) if (xj !== xi) weight *= (x - xj) / (xi - xj);
    y += weight;
  }
  return 1 - Math.exp(-Math.exp(y));
}

/** The speed, m/s EAS, that goes farthest over the ground against a headwind: every hundredth tried, then by thirds. */
export function farthestSpeed(polar: BestGlide, headwind: number, thinness: number): number {
  const reach = (u: number) => {
    const sin = sinGlide(polar, u * polar.speed, 0);
    const tas = u * polar.speed * thinness;
    return (tas * Math.sqrt(1 - sin * sin) - headwind) / (tas * sin);
  };
  let best = 0.75;
  for (let u = 0.76; u <= 2; u += 0.01) if (reach(u) > reach(best)) best = u;
  let [low, high] = [Math.max(0.75, best - 0.01), Math.min(2, best + 0.01)];
  for (let i = 0; i < 25; i++) {
    const third = (high - low) / 3;
    if (reach(low + third) < reach(high - third)) low += third;
    else high -= third;
  }
  return ((low + high) / 2) * polar.speed;
}
