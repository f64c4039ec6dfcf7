import { describe, expect, it } from 'vitest';
import { formatKeyHeight } from './key-height.ts';

const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const ft = 0.3048;
const low = (height: number, limit = 300) => ({
  code: 'final-turn-low' as const,
  at: 'final' as const,
  value: height * ft,
  limit: limit * ft,
});
const say = (
  height: number,
  cautions: Parameters<typeof formatKeyHeight>[1],
  units: typeof feet | typeof metric = feet,
) => formatKeyHeight({ id: 'final', height: height * ft }, cautions, units).replace('\u00a0', ' ');

describe('the height of a key position', () => {
  it('is printed to the nearest step', () => {
    expect(say(296, [])).toBe('300 ft');
    expect(say(296, [], metric)).toBe('90 m');
  });

  it('has the digit that shows that it is under its limit, where the nearest step would read as the limit', () => {
    expect(say(299.4, [low(299.4)])).toBe('299 ft');
    expect(say(296, [low(296)])).toBe('296 ft');
    expect(say(294, [low(294)])).toBe('290 ft');
    expect(say(299.4, [low(299.4)], metric)).toBe('90 m');
    const key = { code: 'downwind-key-height', at: 'final', value: 1203 * ft, limit: 1200 * ft } as const;
    expect(say(1203, [key])).toBe('1,203 ft');
  });

  it('takes no other caution for its own', () => {
    expect(say(296, [{ ...low(296), at: 'base-key' }])).toBe('300 ft');
    expect(say(296, [{ ...low(296), code: 'obstacle-clearance' }])).toBe('300 ft');
    expect(say(296, [low(280)])).toBe('300 ft');
  });
});
