import { formatAngle } from '../../units/angle-text.ts';
import { metresPerFoot, metresPerSecondPerFootPerMinute, radiansPerDegree } from '../../units/factors.ts';
import { numberText, roundDownTo, roundUpTo, withUnit } from '../../units/rounding.ts';
import {
  distanceStep,
  formatDistance,
  formatHeight,
  formatMass,
  formatSink,
  formatSpeed,
  formatTime,
  heightStep,
  speedStep,
} from './format.ts';
import type { PageUnits } from './page-units.ts';

// A figure that must not be missed is printed not to the nearest step of the page but to the next one on its safe
// side: what is needed is rounded up; what there is to spend, or to stay below, is rounded down. All throw RangeError
// where a value is not finite.

/** m, as it is printed: the low edge of a band of heights rounded up, the high edge down. */
export function roundEdge(metres: number, edge: 'low' | 'high', units: PageUnits): number {
  return (edge === 'low' ? roundUpTo : roundDownTo)(metres, heightStep(units));
}

/** m: an edge of a band of heights. */
export function formatEdge(metres: number, edge: 'low' | 'high', units: PageUnits): string {
  return formatHeight(roundEdge(metres, edge, units), units);
}

/** m: a height that must be reached, such as the one by which the turn to final is complete; never rounded down. */
export function formatLeastHeight(metres: number, units: PageUnits): string {
  return formatEdge(metres, 'low', units);
}

/** m: a distance needed rounds `up`, a distance left rounds `down`. */
export function formatSafeDistance(metres: number, way: 'up' | 'down', units: PageUnits): string {
  return formatDistance(roundSafeDistance(metres, way, units), units);
}

/** m, as `formatSafeDistance` prints it. */
export function roundSafeDistance(metres: number, way: 'up' | 'down', units: PageUnits): number {
  return (way === 'up' ? roundUpTo : roundDownTo)(metres, distanceStep(units));
}

/** m: how far off; under 100 m to 1 m or 5 ft, from there on as `formatSafeDistance`; never less than it is. */
export function formatFar(metres: number, units: PageUnits): string {
  if (metres >= 100) return formatSafeDistance(metres, 'up', units);
  return units.distance === 'ft'
    ? withUnit(roundUpTo(metres / metresPerFoot, 5), 5, 'ft')
    : withUnit(roundUpTo(metres, 1), 1, 'm');
}

/** m: a low height that is needed, to 1 ft or 0.1 m; never rounded down. */
export function formatLeastLowHeight(metres: number, units: PageUnits): string {
  return units.height === 'ft'
    ? withUnit(roundUpTo(metres / metresPerFoot, 1), 1, 'ft')
    : withUnit(roundUpTo(metres, 0.1), 0.1, 'm');
}

/** m/s: a limit, such as an aircraft's most wind; never rounded up. */
export function formatMostSpeed(metresPerSecond: number, units: PageUnits): string {
  return formatSpeed(roundMostSpeed(metresPerSecond, units), units);
}

/** m/s: a speed that must be reached; never rounded down. */
export function formatLeastSpeed(metresPerSecond: number, units: PageUnits): string {
  return formatSpeed(roundUpTo(metresPerSecond, speedStep(units)), units);
}

/** m/s, as `formatMostSpeed` prints it. */
export function roundMostSpeed(metresPerSecond: number, units: PageUnits): number {
  return roundDownTo(metresPerSecond, speedStep(units));
}

/** rad: a limit, such as an aircraft's steepest bank; never rounded up. */
export function formatMostAngle(radians: number): string {
  return formatAngle(roundDownTo(radians, radiansPerDegree));
}

/** rad: the most that an angle reaches; never rounded down. */
export function formatAngleUp(radians: number): string {
  return formatAngle(roundUpTo(radians, radiansPerDegree));
}

/** A multiple of the stall speed: `1.29`; never rounded up. */
export function formatMargin(times: number): string {
  return numberText(roundDownTo(times, 0.01), 0.01);
}

/** s that something takes; never rounded down. */
export function formatTimeUp(seconds: number): string {
  return formatTime(roundUpTo(seconds, 1));
}

/** s that are left; never rounded up. */
export function formatTimeDown(seconds: number): string {
  return formatTime(roundDownTo(seconds, 1));
}

/** m/s: the steps of a sink, and coarser ones where only an upper limit is known. */
const sinkSteps = {
  ft: { fine: 10 * metresPerSecondPerFootPerMinute, coarse: 100 * metresPerSecondPerFootPerMinute },
  m: { fine: 0.1, coarse: 0.5 },
} as const;

/** m/s downward, in a touchdown or a fall; never rounded down. */
export function formatSinkUp(
  metresPerSecond: number,
  units: PageUnits,
  how: 'fine' | 'coarse' = 'fine',
): string {
  return formatSink(roundUpTo(metresPerSecond, sinkSteps[units.height][how]), units);
}

/** kg: the most, never rounded up, or the least, never rounded down. */
export function formatMassLimit(kilograms: number, which: 'most' | 'least'): string {
  return formatMass((which === 'most' ? roundDownTo : roundUpTo)(kilograms, 1));
}
