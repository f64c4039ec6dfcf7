import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody, sayIn } from '../trial-packet.ts';

const celsius = (value: number) => value + 273.15;
const warm = flyTrial({ temperature: celsius(25), qnh: 100800 });

describe(':air[…]', () => {
  it('says the air of the day', () => {
    expect(sayIn(':air[temperature]', warm)).toBe('25 °C');
    expect(sayIn(':air[qnh]', warm)).toBe('1008 hPa');
    expect(sayIn(':air[elevation]', warm)).toBe('310 ft');
  });

  it('brings the pressure to the field', () => {
    // Near sea level 1 hPa is about 27 ft of height: ICAO Doc 7488, Manual of the ICAO Standard Atmosphere (from
    // memory).
    expect(sayIn(':air[pressure]', warm)).toBe(`${Math.round(1008 - 310 / 27.3)} hPa`);
  });

  it('says the density altitude', () => {
    // FAA-H-8083-25, Aircraft Performance: standard air has a density altitude equal to its pressure altitude.
    const standard = flyTrial();
    expect(sayIn(':air[density-altitude]', standard)).toBe('310 ft');
    // The common rule, 120 ft for each degree above standard (common practice, no source), to its own accuracy.
    const pressureAltitude = 310 + (1013.25 - 1008) * 27.3;
    const rule = pressureAltitude + 118.8 * (25 - (15 - 0.00198 * pressureAltitude));
    const said = Number(/^[\d,]+/.exec(sayIn(':air[density-altitude]', warm))![0].replace(',', ''));
    expect(Math.abs(said - rule)).toBeLessThan(60);
  });

  it('lists what it can say', () => {
    expect(renderBody(':air[density]', warm).messages).toEqual([
      expect.stringMatching(/^4:6 .*It can be `density-altitude`, `temperature`/),
    ]);
  });
});
