import { describe, expect, it } from 'vitest';
import { didYouMean, nearestName } from './nearest-name.ts';

describe('the nearest name', () => {
  it('is found for a slip of the finger', () => {
    expect(nearestName('aproach', ['stall', 'approach'])).toBe('approach');
    expect(nearestName('Osier-15', ['withy-80', 'osier-15'])).toBe('osier-15');
    expect(nearestName('patern', ['profile', 'pattern'])).toBe('pattern');
  });
  it('is none where nothing is near, or nothing is known', () => {
    expect(nearestName('balloon', ['stall', 'approach'])).toBeUndefined();
    expect(nearestName('stall', [])).toBeUndefined();
    expect(didYouMean('balloon', ['stall'])).toBe('');
  });
});
