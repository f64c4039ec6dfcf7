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

  it('sets the ticks of an axis from nought to its end', () => {
    expect(niceTicks(100, 5)).toEqual({ step: 20, ticks: [0, 20, 40, 60, 80, 100] });
    expect(niceTicks(100, 4).step).toBe(50);
    expect(niceTicks(100, 2).step).toBe(50);
    expect(niceTicks(99, 10).ticks).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
    expect(niceTicks(0.6, 3)).toEqual({ step: 0.2, ticks: [0, 0.2, 0.4, expect.closeTo(0.6, 12)] });
    expect(niceTicks(210, 10).step).toBe(50);
    expect(niceTicks(510, 10).step).toBe(100);
  });

  it('names no scale beyond 1:5,000,000', () => {
    const all = [...roundScales()];
    expect(all[0]).toBe(500);
    expect(all.at(-1)).toBe(5_000_000);
    expect(all).toEqual([...all].sort((one, other) => one - other));
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
