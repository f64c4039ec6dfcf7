import { describe, expect, it } from 'vitest';
import {
  formatEdge,
  formatFar,
  formatLeastHeight,
  formatLeastLowHeight,
  formatLeastSpeed,
  formatMostAngle,
  formatMostSpeed,
  formatSafeDistance,
} from './safe-rounding.ts';

const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const ft = 0.3048;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the edge of a band of heights', () => {
  it('is rounded into the band: the low one up, the high one down, to 10 ft', () => {
    expect(plain(formatEdge(641 * ft, 'low', feet))).toBe('650 ft');
    expect(plain(formatEdge(1309 * ft, 'high', feet))).toBe('1,300 ft');
  });
  it('keeps a whole step', () => {
    for (const height of [300, 640, 1000, 1310]) {
      const text = `${height.toLocaleString('en')} ft`;
      expect(plain(formatEdge(height * ft, 'low', feet))).toBe(text);
      expect(plain(formatEdge(height * ft, 'high', feet))).toBe(text);
    }
  });
  it('is in steps of 5 m on a metric page', () => {
    expect(plain(formatEdge(201, 'low', metric))).toBe('205 m');
    expect(plain(formatEdge(204.9, 'high', metric))).toBe('200 m');
  });
  it('that is not a number is refused', () =>
    expect(() => formatEdge(Number.NaN, 'low', feet)).toThrow(RangeError));
});

describe('a distance', () => {
  it('that is needed is rounded up, that is left down', () => {
    expect(plain(formatSafeDistance(261, 'up', feet))).toBe('270 m');
    expect(plain(formatSafeDistance(269, 'down', feet))).toBe('260 m');
    expect(plain(formatSafeDistance(301 * ft, 'up', { ...feet, distance: 'ft' }))).toBe('350 ft');
  });
});

describe('how far off something is', () => {
  const longFeet = { ...feet, distance: 'ft' } as const;
  it('is never less than it is: to 1 m or 5 ft near by, farther as distances are', () => {
    expect(plain(formatFar(0.2, feet))).toBe('1 m');
    expect(plain(formatFar(99.2, feet))).toBe('100 m');
    expect(plain(formatFar(100, feet))).toBe('100 m');
    expect(plain(formatFar(101, feet))).toBe('110 m');
    expect(plain(formatFar(11 * ft, longFeet))).toBe('15 ft');
    expect(plain(formatFar(329 * ft, longFeet))).toBe('350 ft');
    expect(plain(formatFar(100, longFeet))).toBe('350 ft');
  });
});

describe('a limit', () => {
  const knots = 1852 / 3600;
  it('that is not to be passed is never rounded up', () => {
    expect(plain(formatMostSpeed(8.1 * knots, feet))).toBe('8 kt');
    expect(plain(formatMostSpeed(8.9 * knots, feet))).toBe('8 kt');
    expect(plain(formatMostSpeed(18 * knots, feet))).toBe('18 kt');
    expect(plain(formatMostSpeed(18 * knots, metric))).toBe('33 km/h');
    expect(formatMostAngle((59.8 * Math.PI) / 180)).toBe('59°');
    expect(formatMostAngle((60 * Math.PI) / 180)).toBe('60°');
  });
  it('that must be reached is never rounded down', () => {
    expect(plain(formatLeastHeight(301 * ft, feet))).toBe('310 ft');
    expect(plain(formatLeastHeight(300 * ft, feet))).toBe('300 ft');
    expect(plain(formatLeastHeight(300 * ft, metric))).toBe('95 m');
    expect(plain(formatLeastLowHeight(12.1 * ft, feet))).toBe('13 ft');
    expect(plain(formatLeastLowHeight(3.61, metric))).toBe('3.7 m');
    expect(plain(formatLeastSpeed(44.1 * knots, feet))).toBe('45 kt');
    expect(plain(formatLeastSpeed(20.1, metric))).toBe('73 km/h');
  });
});
