import { describe, expect, it } from 'vitest';
import { type RangeOf, RequestError } from '../../flight/terms/errors.ts';
import { metresPerFoot, metresPerSecondPerKnot } from '../../units/factors.ts';
import { requestSentence } from './request-words.ts';

const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const range = (of: RangeOf, low: number, high: number, units: typeof feet | typeof metric = feet) =>
  requestSentence(new RequestError('it', { code: 'out-of-range', of, low, high }), units);

describe('a range that a value must lie in', () => {
  it('is told rounded into itself, so that what is told is taken', () => {
    const kt = metresPerSecondPerKnot;
    expect(range('airspeed', 9.2 * kt, 135.9 * kt)).toBe('it must be 10 to 135 kt');
    expect(range('height', 201 * metresPerFoot, 4919 * metresPerFoot)).toBe('it must be 210 to 4910 ft');
    expect(range('height', 60.4, 1499.6, metric)).toBe('it must be 61 to 1499 m');
    expect(range('temperature', 273.15 - 40.5, 273.15 + 54.5)).toBe('it must be -40 to 54 C');
    expect(range('pressure', 85_010, 108_990)).toBe('it must be 851 to 1089 hPa');
    expect(range('number', 1.019, 1.999)).toBe('it must be 1.02 to 1.99');
    expect(range('whole-number', 1, 6)).toBe('it must be a whole number, 1 to 6');
  });
});
