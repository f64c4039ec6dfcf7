import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { niceTicks, roundBelow, roundScales } from './scale.ts';

describe('round numbers', () => {
  it('names the round scales in order', () => {
    const scales = [];
    for (const scale of roundScales(1000)) {
      scales.push(scale);
      if (scale >= 50_000) break;
    }
    expect(scales).toEqual([1000, 2000, 2500, 5000, 10_000, 20_000, 25_000, 50_000]);
  });

  it('finds the largest 1, 2 or 5 below', () => {
    expect([0.1, 0.7, 1, 1.99, 2, 4.9, 5, 99, 100, 201].map(roundBelow)).toEqual([
      0.1, 0.5, 1, 1, 2, 2, 5, 50, 100, 200,
    ]);
  });

  it('never sets more ticks on an axis than fit, nor fewer than a fifth of that', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 5000, noNaN: true }),
        fc.integer({ min: 2, max: 12 }),
        (end, most) => {
          const { step, ticks } = niceTicks(end, most);
          expect(ticks[0]).toBe(0);
          expect(ticks.length - 1).toBeLessThanOrEqual(most);
          expect(end / step).toBeGreaterThan(most / 2.5 - 1e-6);
          expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)));
        },
      ),
    );
  });
});
