import type { Aircraft, BestGlide, Power } from '../terms/aircraft.ts';

/** A glide polar at the mass flown: best-glide speed in m/s EAS, best ratio. Thrust is included in it. */
export type Polar = BestGlide;

/**
 * The polar of a power setting at a mass: the best-glide speed goes with the square root of the mass, and the ratio
 * stays the same (FAA-H-8083-13, chapter 5). Undefined where the aircraft gives none for the setting.
 */
export function polarAtMass(aircraft: Aircraft, power: Power, mass: number): Polar | undefined {
  const polar = power === 'idle' ? aircraft.glide.idle : aircraft.glide.stopped;
  return polar && { speed: speedAtMass(polar.speed, aircraft, mass), ratio: polar.ratio };
}

/** A speed given for the reference mass, at another mass: the same lift coefficient, so V goes with sqrt(m). */
export function speedAtMass(speed: number, aircraft: Aircraft, mass: number): number {
  return speed * Math.sqrt(mass / aircraft.mass.reference);
}

/**
 * Drag over weight at a speed and load factor, for a polar with parabolic drag: cos(g0)/(2E) [u^2 + (n/cos
 * g0)^2/u^2], u = EAS over best-glide EAS, tan(g0) = 1/E.
 * `inducedShare` is the share of the induced part that ground effect leaves (1 away from the ground).
 */
export function dragOverWeight(polar: Polar, eas: number, loadFactor: number, inducedShare = 1): number {
  const cosBest = cosOfBestGlide(polar.ratio);
  const u2 = (eas / polar.speed) ** 2;
  return (cosBest / (2 * polar.ratio)) * (u2 + (inducedShare * (loadFactor / cosBest) ** 2) / u2);
}

/**
 * Sine of the glide angle in a steady glide or gliding turn, at `eas` m/s and a bank with this cosine. Solves sin(g)
 * = drag/weight with n = cos(g)/cos(bank) exactly, as a quadratic in sin(g): at 4:1 to 6:1 the small-angle form is
 * wrong by a few per cent. Not below 0; 1 or more means no steady glide exists.
 */
export function sinOfGlide(polar: Polar, eas: number, cosBank: number): number {
  const cosBest = cosOfBestGlide(polar.ratio);
  const u2 = (eas / polar.speed) ** 2;
  const parasite = (cosBest * u2) / (2 * polar.ratio);
  const induced = 1 / (2 * polar.ratio * cosBest * cosBank * cosBank * u2);
  return (Math.sqrt(1 + 4 * induced * (parasite + induced)) - 1) / (2 * induced);
}

function cosOfBestGlide(ratio: number): number {
  return ratio / Math.sqrt(1 + ratio * ratio);
}
