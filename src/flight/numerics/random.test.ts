import { describe, expect, it } from 'vitest';
import { normalFrom, randomFrom } from './random.ts';

const many = 100_000;
const draw = (next: () => number, count = many) => Array.from({ length: count }, next);

describe('random numbers from a seed', () => {
  it('are the same for the same seed, and others for another', () => {
    expect(draw(randomFrom(1903), 50)).toEqual(draw(randomFrom(1903), 50));
    expect(draw(randomFrom(1903), 50)).not.toEqual(draw(randomFrom(1904), 50));
  });

  it('are those that every machine gets: pinned from this code', () => {
    expect(draw(randomFrom(1), 3)).toEqual([0.6270739405881613, 0.002735721180215478, 0.5274470399599522]);
  });

  it('are spread evenly from 0 to 1', () => {
    const numbers = draw(randomFrom(42));
    const tenths = Array.from({ length: 10 }, () => 0);
    for (const number of numbers) {
      expect(number >= 0 && number < 1).toBe(true);
      tenths[Math.floor(number * 10)]!++;
    }
    // Chi-squared, 9 degrees of freedom: one generator in a thousand exceeds 27.9.
    const expected = many / 10;
    const chiSquared = tenths.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    expect(chiSquared).toBeLessThan(27.9);
  });
});

describe('normal numbers', () => {
  const numbers = draw(normalFrom(randomFrom(7)));
  const moment = (power: number) => numbers.reduce((sum, x) => sum + x ** power, 0) / many;

  it('have mean 0, deviation 1, no skew, and the kurtosis of a normal distribution', () => {
    // Four standard errors of each: 1, sqrt 2, sqrt 15 and sqrt 96 over the square root of the number.
    const bound = (deviation: number) => (4 * deviation) / Math.sqrt(many);
    expect(Math.abs(moment(1))).toBeLessThan(bound(1));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(bound(Math.SQRT2));
    expect(Math.abs(moment(3))).toBeLessThan(bound(Math.sqrt(15)));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(bound(Math.sqrt(96)));
  });

  it.each([
    [1, 0.682_689],
    [2, 0.954_5],
    [3, 0.997_3],
  ])('lie within %i deviations as often as the normal table says: %f', (deviations, share) => {
    const within = numbers.filter((x) => Math.abs(x) < deviations).length / many;
    expect(Math.abs(within - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / many) + 1e-5);
  });

  it('do not follow from one another, not even the two of a pair', () => {
    for (const lag of [1, 2, 6]) {
      const together = numbers.slice(lag).reduce((sum, x, i) => sum + x * numbers[i]!, 0) / many;
      expect(Math.abs(together)).toBeLessThan(4 / Math.sqrt(many));
    }
  });

  it('are the same for the same seed', () => {
    expect(draw(normalFrom(randomFrom(7)), 5)).toEqual(numbers.slice(0, 5));
  });
});
