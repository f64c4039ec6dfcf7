import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatAngle, formatDirection } from '../../units/angle-text.ts';
import { parseQuantity } from '../../units/quantity.ts';
import { numberText, roundDownTo, roundTo, roundUpTo } from '../../units/rounding.ts';
import {
  distanceStep,
  formatDensityAltitude,
  formatDistance,
  formatHeight,
  formatLowHeight,
  formatMass,
  formatPressure,
  formatRatio,
  formatSink,
  formatSpeed,
  formatTemperature,
  formatTime,
  formatTurn,
  formatWind,
  heightStep,
  speedStep,
} from './format.ts';
import type { PageUnits } from './page-units.ts';

const feet: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
const metres: PageUnits = { height: 'm', distance: 'm', speed: 'km/h' };
const rad = (degrees: number) => (degrees * Math.PI) / 180;

describe('rounding', () => {
  it('takes halves away from zero, also where floating point falls a hair short', () => {
    expect(roundTo(15, 10)).toBe(20);
    expect(roundTo(-15, 10)).toBe(-20);
    expect(roundTo((1.15 * 100) / 100, 0.1)).toBe(1.2);
    expect(roundTo(14.999, 10)).toBe(10);
    expect(roundTo(3.1, 0.1)).toBe(3.1);
    expect(roundTo(1.1, 0.4)).toBeCloseTo(1.2, 12);
  });
  it('up and down keeps a whole step that floating point left a hair off', () => {
    expect(roundUpTo(12.01, 0.1)).toBe(12.1);
    expect(roundUpTo(300 * 1.0000000001, 10)).toBe(300);
    expect(roundDownTo(18 * (1 - 1e-12), 1)).toBe(18);
    expect(roundDownTo(-2.1, 1)).toBe(-3);
    expect(roundDownTo(9.26, 1852 / 3600)).toBeCloseTo((18 * 1852) / 3600, 9);
  });
  it('never gives negative zero', () => expect(Object.is(roundTo(-0.4, 1), 0)).toBe(true));
});

describe('a figure on the page', () => {
  it('has a no-break space, a real minus and a thousands comma', () => {
    expect(formatHeight(304.8, feet)).toBe('1,000\u00a0ft');
    expect(formatHeight(-30.48, feet)).toBe('\u2212100\u00a0ft');
    expect(numberText(1234567, 1)).toBe('1,234,567');
    expect(numberText(999, 1)).toBe('999');
  });
  it('is rounded as pilots use it', () => {
    expect(formatHeight(305.9, feet)).toBe('1,000\u00a0ft');
    expect(formatHeight(302, metres)).toBe('300\u00a0m');
    expect(formatLowHeight(3.6576, feet)).toBe('12\u00a0ft');
    expect(formatLowHeight(3.6576, metres)).toBe('3.7\u00a0m');
    expect(formatLowHeight(50 * 0.3048, feet)).toBe('50\u00a0ft');
    expect(formatLowHeight(18, feet)).toBe('60\u00a0ft');
    expect(formatDistance(137, feet)).toBe('140\u00a0m');
    expect(formatDistance(137, { ...feet, distance: 'ft' })).toBe('450\u00a0ft');
    expect(formatSpeed(parseQuantity('42.4 kt', 'speed'), feet)).toBe('42\u00a0kt');
    expect(formatSpeed(20, metres)).toBe('72\u00a0km/h');
    expect(formatSpeed(20, { ...feet, speed: 'mph' })).toBe('45\u00a0mph');
    expect(formatSink(3.14, feet)).toBe('620\u00a0ft/min');
    expect(formatSink(3.14, metres)).toBe('3.1\u00a0m/s');
    expect(formatTime(25.4)).toBe('25\u00a0s');
    expect(formatAngle(rad(-29.6))).toBe('\u221230°');
    expect(formatRatio(6.4)).toBe('6.4:1');
    expect(formatRatio(6)).toBe('6.0:1');
    expect(formatTemperature(298.15)).toBe('25\u00a0°C');
    expect(formatTemperature(273)).toBe('0\u00a0°C');
    expect(formatPressure(100800)).toBe('1008\u00a0hPa');
    expect(formatMass(365.2)).toBe('365\u00a0kg');
    expect(formatDensityAltitude(-61, feet)).toBe('\u2212200\u00a0ft');
  });
  it('gives directions three digits, and north as 360', () => {
    expect(formatDirection(rad(8))).toBe('008°');
    expect(formatDirection(0)).toBe('360°');
    expect(formatDirection(rad(359.7))).toBe('360°');
    expect(formatDirection(rad(-122))).toBe('238°');
    expect(formatDirection(rad(598))).toBe('238°');
  });
  it('gives the wind, or calm', () => {
    expect(formatWind(rad(210), parseQuantity('12 kt', 'speed'), feet)).toBe('210°\u00a012\u00a0kt');
    expect(formatWind(rad(210), 0.2, feet)).toBe('calm');
  });
  it('of a very light wind in km/h is not calm yet', () => {
    expect(formatWind(rad(210), 0.2, metres)).toBe('210°\u00a01\u00a0km/h');
    expect(formatWind(rad(210), 0.1, metres)).toBe('calm');
  });
  it('says which way something turns, unless it is less than can be printed', () => {
    expect(formatTurn(rad(20))).toBe('20° clockwise');
    expect(formatTurn(rad(-15))).toBe('15° anticlockwise');
    expect(formatTurn(rad(0.4))).toBe('none');
    expect(formatTurn(0)).toBe('none');
  });
  it('has the step that limits and edges of its kind are rounded to', () => {
    expect([heightStep(feet), heightStep(metres)]).toEqual([3.048, 5]);
    expect([distanceStep({ ...feet, distance: 'ft' }), distanceStep(feet)]).toEqual([15.24, 10]);
    expect(speedStep(feet)).toBeCloseTo(1852 / 3600, 12);
    expect(speedStep(metres)).toBeCloseTo(1 / 3.6, 12);
  });
  it('that is not known is not printed', () => {
    expect(() => formatHeight(Number.NaN, feet)).toThrow(RangeError);
    expect(() => formatDirection(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

describe('what is printed reads back', () => {
  const amount = fc.double({ min: -5000, max: 5000, noNaN: true });
  it('to within half of the rounding step', () => {
    fc.assert(
      fc.property(amount, (value) => {
        expect(Math.abs(parseQuantity(formatHeight(value, feet), 'length') - value)).toBeLessThan(
          5 * 0.3048 + 1e-6,
        );
        expect(Math.abs(parseQuantity(formatDistance(value, feet), 'length') - value)).toBeLessThan(5 + 1e-6);
        expect(Math.abs(parseQuantity(formatSink(value, metres), 'vertical-speed') - value)).toBeLessThan(
          0.05 + 1e-6,
        );
        expect(Math.abs(parseQuantity(formatSpeed(value, feet), 'speed') - value)).toBeLessThan(0.26);
      }),
    );
  });
  it('and printing what was read prints the same again', () => {
    fc.assert(
      fc.property(amount, (value) => {
        const once = formatHeight(value, feet);
        expect(formatHeight(parseQuantity(once, 'length'), feet)).toBe(once);
        expect(once).not.toMatch(/^[-\u2212]0\D/);
      }),
    );
  });
  it('also for directions', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (radians) => {
        const back = parseQuantity(formatDirection(radians), 'bearing');
        expect(Math.cos(back - radians)).toBeGreaterThan(Math.cos(rad(0.51)));
      }),
    );
  });
});
