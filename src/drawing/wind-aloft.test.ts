import { describe, expect, it } from 'vitest';
import { windAloft } from './wind-aloft.ts';

const wind = [
  { height: 10, from: 0, speed: 5 },
  { height: 110, from: Math.PI / 2, speed: 5 },
];

describe('the wind between the listed heights', () => {
  it('is the vector between its neighbours', () => {
    const half = windAloft(wind, 60)!;
    expect(half.speed).toBeCloseTo(5 * Math.SQRT1_2);
    expect(half.from).toBeCloseTo(Math.PI / 4);
  });

  it('is the listed one at its height, and the nearest beyond', () => {
    expect(windAloft(wind, 110)).toEqual(wind[1]);
    expect(windAloft(wind, 500)).toEqual(wind[1]);
    expect(windAloft(wind, 2)).toEqual(wind[0]);
    expect(windAloft([], 2)).toBeUndefined();
  });
});
