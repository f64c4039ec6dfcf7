import { radiansPerDegree } from './factors.ts';
import { numberText, roundTo } from './rounding.ts';

/** rad, to 1 degree: `30°`. */
export function formatAngle(radians: number): string {
  return `${numberText(radians / radiansPerDegree, 1)}°`;
}

/** rad, any whole number of turns away, to 1 degree with three digits; north is `360°`. */
export function formatDirection(radians: number): string {
  if (!Number.isFinite(radians)) throw new RangeError(`${radians} cannot be printed as a direction`);
  const degrees = ((roundTo(radians / radiansPerDegree, 1) % 360) + 360) % 360;
  return `${String(degrees === 0 ? 360 : degrees).padStart(3, '0')}°`;
}
