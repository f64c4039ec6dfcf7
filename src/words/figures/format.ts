import { formatAngle, formatDirection } from '../../units/angle-text.ts';
import {
  kelvinAtZeroCelsius,
  metresPerFoot,
  metresPerSecondPerFootPerMinute,
  pascalsPerHectopascal,
} from '../../units/factors.ts';
import { noBreakSpace, numberText, roundTo, withUnit } from '../../units/rounding.ts';
import type { PageUnits } from './page-units.ts';
import { speedUnitSize } from './unit-size.ts';

// Every computed figure of a packet is printed by one of these, so that the same value reads the same everywhere; a
// limit, a margin or the edge of a band by one of `safe-rounding.ts`; a value beside its limit by `telling-apart.ts`.
// Values are in SI units; one that is not finite throws RangeError: a figure that is not known must not be printed.

/** m: the step that heights are printed to. */
export function heightStep(units: PageUnits): number {
  return units.height === 'ft' ? 10 * metresPerFoot : 5;
}

/** m: the step that distances are printed to. */
export function distanceStep(units: PageUnits): number {
  return units.distance === 'ft' ? 50 * metresPerFoot : 10;
}

/** m/s: the step that speeds are printed to. */
export function speedStep(units: PageUnits): number {
  return speedUnitSize(units);
}

/** The steps that a start height and a wind are told in: what a person can set. */
export function pageSteps(units: PageUnits): { readonly height: number; readonly speed: number } {
  return { height: heightStep(units), speed: speedStep(units) };
}

/** Wheel heights below this are printed to the foot. m. */
const lowHeight = 50 * metresPerFoot;

/** m, to 10 ft or 5 m: `1,000 ft`. */
export function formatHeight(metres: number, units: PageUnits): string {
  return units.height === 'ft' ? withUnit(metres / metresPerFoot, 10, 'ft') : withUnit(metres, 5, 'm');
}

/** m, for the round-out: below 50 ft to 1 ft or 0.1 m, from there on as `formatHeight`. */
export function formatLowHeight(metres: number, units: PageUnits): string {
  if (Math.abs(metres) >= lowHeight) return formatHeight(metres, units);
  return units.height === 'ft' ? withUnit(metres / metresPerFoot, 1, 'ft') : withUnit(metres, 0.1, 'm');
}

/** m, to 10 ft or 5 m; negative where the air is denser than standard at sea level. */
export function formatDensityAltitude(metres: number, units: PageUnits): string {
  return formatHeight(metres, units);
}

/** m, to 10 m or 50 ft. */
export function formatDistance(metres: number, units: PageUnits): string {
  return units.distance === 'ft' ? withUnit(metres / metresPerFoot, 50, 'ft') : withUnit(metres, 10, 'm');
}

/** m/s, to 1 kt, 1 km/h or 1 mph. */
export function formatSpeed(metresPerSecond: number, units: PageUnits): string {
  return withUnit(metresPerSecond / speedUnitSize(units), 1, units.speed);
}

/** m/s downward, to 10 ft/min where heights are in feet, else to 0.1 m/s. */
export function formatSink(metresPerSecond: number, units: PageUnits): string {
  return units.height === 'ft'
    ? withUnit(metresPerSecond / metresPerSecondPerFootPerMinute, 10, 'ft/min')
    : withUnit(metresPerSecond, 0.1, 'm/s');
}

/** s, to 1 s: `25 s`. */
export function formatTime(seconds: number): string {
  return withUnit(seconds, 1, 's');
}

/** rad, positive clockwise: `20° clockwise`, `20° anticlockwise`, or `none` where it rounds to none. */
export function formatTurn(radians: number): string {
  const size = formatAngle(Math.abs(radians));
  if (size === formatAngle(0)) return 'none';
  return `${size} ${radians < 0 ? 'anticlockwise' : 'clockwise'}`;
}

/** To 0.1: `6.4:1`. */
export function formatRatio(ratio: number): string {
  return `${numberText(ratio, 0.1)}:1`;
}

/** K, to 1 degree Celsius: `25 °C`. */
export function formatTemperature(kelvin: number): string {
  return withUnit(kelvin - kelvinAtZeroCelsius, 1, '°C');
}

/** Pa, to 1 hPa without a thousands comma, as altimeter settings are written: `1008 hPa`. */
export function formatPressure(pascals: number): string {
  return withUnit(pascals / pascalsPerHectopascal, 1, 'hPa').replace(',', '');
}

/** kg, to 1 kg: `365 kg`. */
export function formatMass(kilograms: number): string {
  return withUnit(kilograms, 1, 'kg');
}

/** rad true and m/s: `210° 12 kt`; `calm` where the speed rounds to nothing. */
export function formatWind(from: number, speed: number, units: PageUnits): string {
  if (roundTo(speed / speedUnitSize(units), 1) === 0) return 'calm';
  return `${formatDirection(from)}${noBreakSpace}${formatSpeed(speed, units)}`;
}
