import { describe, expect, it } from 'vitest';
import {
  airspeedFactor,
  densityAltitude,
  fieldAir,
  pressureAltitude,
  standardDensity,
  standardPressure,
  stationPressure,
} from './air.ts';

// The printed tables are in tests/published-values.test.ts; here is how the functions fit together.

const altitudes = [-300, 0, 94.488, 1000, 3000, 10_000];

describe('standard air', () => {
  it.each(altitudes)('at %d m has that pressure altitude and that density altitude', (altitude) => {
    expect(pressureAltitude(standardPressure(altitude))).toBeCloseTo(altitude, 6);
    expect(densityAltitude(standardDensity(altitude))).toBeCloseTo(altitude, 6);
  });

  it('thins with height', () => {
    for (let i = 1; i < altitudes.length; i++) {
      expect(standardDensity(altitudes[i]!)).toBeLessThan(standardDensity(altitudes[i - 1]!));
    }
  });
});

describe('the air at a field', () => {
  it.each(altitudes)('is standard at %d m unless told otherwise', (elevation) => {
    const air = fieldAir(elevation);
    expect(air.density).toBeCloseTo(standardDensity(elevation), 9);
    expect(air.densityAltitude).toBeCloseTo(elevation, 6);
  });

  it('has the QNH for its pressure at sea level', () => {
    expect(stationPressure(100_800, 0)).toBeCloseTo(100_800, 6);
    expect(fieldAir(0, undefined, 100_800).pressure).toBeCloseTo(100_800, 6);
  });

  it('makes the altimeter set to its QNH read its elevation', () => {
    const [qnh, elevation] = [99_300, 640];
    const pressure = stationPressure(qnh, elevation);
    expect(pressureAltitude(pressure) - pressureAltitude(qnh)).toBeCloseTo(elevation, 6);
  });

  it('is thinner, and so the density altitude higher, on a hot or a low day', () => {
    const standard = fieldAir(300);
    expect(fieldAir(300, 308.15).densityAltitude).toBeGreaterThan(standard.densityAltitude);
    expect(fieldAir(300, undefined, 99_000).densityAltitude).toBeGreaterThan(standard.densityAltitude);
    expect(fieldAir(300, 263.15).densityAltitude).toBeLessThan(standard.densityAltitude);
  });

  it('obeys the gas law', () => {
    const { pressure, density, temperature } = fieldAir(500, 300, 101_000);
    expect(pressure / (density * temperature)).toBeCloseTo(287.053, 3);
  });
});

describe('true airspeed over equivalent airspeed', () => {
  it('is 1 at sea level in standard air, and sqrt(rho0/rho) above it', () => {
    const factor = airspeedFactor(fieldAir(0));
    expect(factor(0)).toBeCloseTo(1, 12);
    for (const height of [50, 300, 1500]) {
      expect(factor(height)).toBeCloseTo(Math.sqrt(standardDensity(0) / standardDensity(height)), 9);
    }
  });

  it('takes the column above a hot field to cool at the standard rate from the temperature there', () => {
    const factor = airspeedFactor(fieldAir(0, 308.15));
    const below = factor(0) ** -2;
    const above = factor(1000) ** -2;
    // Hydrostatics by hand, g/(R L) - 1 = 4.2559: (301.65/308.15)^4.2559 = 0.91327.
    expect(above / below).toBeCloseTo((301.65 / 308.15) ** 4.25588, 5);
  });
});
