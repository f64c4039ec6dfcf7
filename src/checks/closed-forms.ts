import { standardGravity } from '../flight/air/constants.ts';
import type { Polar } from '../flight/aircraft/glide.ts';
import { invert } from './invert.ts';

// The same physics as the core, written out and solved another way, so that neither can hide a slip of the other.

/**
 * Glide angle, rad, at `eas` m/s and a bank in rad. Along the path weight pulls with sin(g), drag holds with
 * cos(g0)/(2E) [u^2 + (n/cos g0)^2/u^2], n = cos(g)/cos(bank): solved by halving, where the core solves a quadratic.
 */
export function gliding({ speed, ratio }: Polar, eas: number, bank: number): number {
  const best = Math.atan(1 / ratio);
  const u = eas / speed;
  const spare = (path: number) => {
    const load = Math.cos(path) / Math.cos(bank);
    return Math.sin(path) - (Math.cos(best) / (2 * ratio)) * (u ** 2 + (load / Math.cos(best)) ** 2 / u ** 2);
  };
  return invert(spare, 0, 0, Math.PI / 2);
}

/**
 * Level distance, m of equivalent airspeed squared, in which drag takes the speed from `approach` to `touchdown` (m/s).
 * With D/W = a V^2 + b/V^2 the integral of V dV/(g D/W) is ln[(a V1^4 + b)/(a V2^4 + b)]/(4 a g). Through thinner air
 * multiply by the square of true over equivalent airspeed.
 */
export function slowingDistance(
  { speed, ratio }: Polar,
  { approach, touchdown }: { readonly approach: number; readonly touchdown: number },
  inducedShare: number,
): number {
  const cosBest = Math.cos(Math.atan(1 / ratio));
  const a = cosBest / (2 * ratio * speed ** 2);
  const b = (inducedShare * speed ** 2) / (2 * ratio * cosBest);
  return Math.log((a * approach ** 4 + b) / (a * touchdown ** 4 + b)) / (4 * a * standardGravity);
}
