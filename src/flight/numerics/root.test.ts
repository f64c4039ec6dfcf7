import { describe, expect, it } from 'vitest';
import { rootInBracket, rootNear, seekRoot } from './root.ts';

const cubic = (x: number) => x ** 3 - 2;
const falling = (x: number) => 1 - x;

describe('a root in a bracket', () => {
  it('is found to the tolerance in the value', () => {
    expect(rootInBracket(cubic, [0, 5], 1e-12)).toBeCloseTo(Math.cbrt(2), 10);
  });

  it('is found where the function falls, and where it is as crooked as x^9', () => {
    expect(rootInBracket(falling, [0, 3], 1e-12)).toBeCloseTo(1, 10);
    expect(rootInBracket((x) => x ** 9 - 1e-3, [0, 2], 1e-12)).toBeCloseTo(1e-3 ** (1 / 9), 6);
  });

  it('may be an end of the bracket', () => {
    expect(rootInBracket(falling, [1, 2], 1e-9)).toBe(1);
    expect(rootInBracket(falling, [0, 1], 1e-9)).toBe(1);
  });

  it('is undefined without a change of sign, and where the function stops being one', () => {
    expect(rootInBracket(cubic, [2, 5], 1e-12)).toBeUndefined();
    expect(rootInBracket(() => Number.NaN, [0, 5], 1e-12)).toBeUndefined();
    expect(rootInBracket((x) => (x === 0 || x === 5 ? cubic(x) : Number.NaN), [0, 5], 1e-12)).toBeUndefined();
  });

  it('is undefined where the sign changes by a jump', () => {
    expect(rootInBracket((x) => (x < 1 / 3 ? -1 : 1), [0, 1], 1e-6)).toBeUndefined();
  });
});

describe('a root near a guess', () => {
  it('is found by secants, also from a slope that is rather wrong', () => {
    for (const slope of [1, 3, 10]) expect(rootNear(cubic, 1, slope, 1e-12)).toBeCloseTo(Math.cbrt(2), 10);
  });

  it('is the guess itself where that is right', () => expect(rootNear(falling, 1, -1, 1e-9)).toBe(1));

  it('is undefined where there is none', () => {
    expect(rootNear((x) => x * x + 1, 3, 1, 1e-9)).toBeUndefined();
    expect(rootNear(() => 5, 3, 1, 1e-9)).toBeUndefined();
  });
});

describe('a root sought along a range', () => {
  it('is found from a guess on either side of it, inside or outside of the range', () => {
    for (const guess of [-50, 0, 0.9, 1.1, 9, 400]) {
      const sought = seekRoot(falling, { guess, slope: -2, within: [0, 100] }, 1e-9)!;
      expect(sought.found).toBe(true);
      expect(sought.x).toBeCloseTo(1, 8);
    }
  });

  it('is found where the function bends', () => {
    expect(seekRoot(cubic, { guess: 3, slope: 2, within: [0, 100] }, 1e-9)!.x).toBeCloseTo(Math.cbrt(2), 8);
  });

  it('is the nearer end, with the value there, where it lies beyond', () => {
    expect(seekRoot(falling, { guess: 20, slope: -2, within: [5, 100] }, 1e-9)).toEqual({
      x: 5,
      y: -4,
      found: false,
    });
    expect(seekRoot(falling, { guess: -20, slope: -2, within: [-100, 0] }, 1e-9)).toEqual({
      x: 0,
      y: 1,
      found: false,
    });
  });

  it('is undefined where the function is not one', () => {
    expect(seekRoot(() => Number.NaN, { guess: 3, slope: 1, within: [0, 10] }, 1e-9)).toBeUndefined();
  });
});
