import { describe, expect, it } from 'vitest';
import { formatEdge, formatSafeDistance } from './safe-rounding.ts';

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
