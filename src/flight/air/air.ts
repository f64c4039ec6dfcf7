import { power } from '../numerics/steady-math.ts';
import type { FieldAir } from '../terms/plan.ts';
import {
  gasConstant,
  lapseRate,
  seaLevelDensity,
  seaLevelPressure,
  seaLevelTemperature,
  standardGravity,
} from './constants.ts';

/** Exponent of pressure against temperature in the lowest layer, US Standard Atmosphere 1976, eq. 33a. */
const pressureExponent = standardGravity / (gasConstant * lapseRate);
const densityExponent = pressureExponent - 1;

/** Standard temperature, K, at a geopotential altitude in m; -500 m to 11 km. */
export function standardTemperature(altitude: number): number {
  return seaLevelTemperature - lapseRate * altitude;
}

/** Standard pressure, Pa, at a geopotential altitude in m; -500 m to 11 km. */
export function standardPressure(altitude: number): number {
  return seaLevelPressure * power(standardTemperature(altitude) / seaLevelTemperature, pressureExponent);
}

/** Standard density, kg/m3, at a geopotential altitude in m; -500 m to 11 km. */
export function standardDensity(altitude: number): number {
  return standardPressure(altitude) / (gasConstant * standardTemperature(altitude));
}

/** The standard altitude, m, at this pressure, Pa: what an altimeter set to 1013.25 hPa reads. */
export function pressureAltitude(pressure: number): number {
  return (seaLevelTemperature / lapseRate) * (1 - power(pressure / seaLevelPressure, 1 / pressureExponent));
}

/** The standard altitude, m, at this density, kg/m3. */
export function densityAltitude(density: number): number {
  return (seaLevelTemperature / lapseRate) * (1 - power(density / seaLevelDensity, 1 / densityExponent));
}

/**
 * Pressure, Pa, at a field from its QNH, Pa, and elevation, m: the pressure at which an altimeter set to the QNH
 * reads the elevation, so that the standard altitudes of the two differ by it.
 */
export function stationPressure(qnh: number, elevation: number): number {
  return standardPressure(pressureAltitude(qnh) + elevation);
}

/** QNH, Pa, of a field's air: the inverse of `stationPressure`. */
export function qnhOf({ pressure, elevation }: FieldAir): number {
  return standardPressure(pressureAltitude(pressure) - elevation);
}

/** The air at a field: elevation in m, temperature in K (default standard), QNH in Pa (default standard). Dry air. */
export function fieldAir(elevation: number, temperature?: number, qnh: number = seaLevelPressure): FieldAir {
  const t = temperature ?? standardTemperature(elevation);
  const pressure = stationPressure(qnh, elevation);
  const density = pressure / (gasConstant * t);
  return { elevation, temperature: t, pressure, density, densityAltitude: densityAltitude(density) };
}

/** True airspeed over equivalent airspeed, sqrt(rho0/rho), by height above the field in m. */
export type AirspeedFactor = (height: number) => number;

/**
 * The column of air above a field: the temperature falls at the standard lapse rate from the field's own, the
 * pressure follows hydrostatically, so the density falls with the standard exponent. This runs at every step of every
 * flight: the power (1 - x)^-n is its binomial series, exact to 1e-9 up to 3 km above the field.
 */
export function airspeedFactor(air: FieldAir): AirspeedFactor {
  const atField = Math.sqrt(seaLevelDensity / air.density);
  const lapse = lapseRate / air.temperature;
  const n = densityExponent / 2;
  const [c1, c2, c3, c4, c5, c6, c7] = [1, 2, 3, 4, 5, 6, 7].map((term) => (n + term - 1) / term) as Seven;
  return (height) => {
    const x = lapse * height;
    return (
      atField *
      (1 + c1 * x * (1 + c2 * x * (1 + c3 * x * (1 + c4 * x * (1 + c5 * x * (1 + c6 * x * (1 + c7 * x)))))))
    );
  };
}

/**
 * How the true airspeed of a constant equivalent airspeed grows with height, as a share for each metre (1/m): the
 * rate of
 * `airspeedFactor` over itself, by height above the field in m.
 */
export function thinningOf(air: FieldAir): (height: number) => number {
  const lapse = lapseRate / air.temperature;
  const growth = (densityExponent / 2) * lapse;
  return (height) => growth / (1 - lapse * height);
}

type Seven = [number, number, number, number, number, number, number];
