import { describe, expect, it } from 'vitest';
import { gliding, slowingDistance } from './closed-forms.ts';

const polar = { speed: 22, ratio: 6.4 };
const g = 9.80665;

describe('the glide angle', () => {
  it('is that of the best ratio, wings level at the best-glide speed', () => {
    expect(1 / Math.tan(gliding(polar, 22, 0))).toBeCloseTo(6.4, 9);
  });

  it('is steeper at any other speed, and in a turn', () => {
    for (const [eas, bank] of [
      [20, 0],
      [25, 0],
      [22, 0.5],
    ] as const) {
      expect(gliding(polar, eas, bank)).toBeGreaterThan(gliding(polar, 22, 0));
    }
  });
});

describe('the distance in which drag slows the aircraft in level flight', () => {
  it('is the sum of many short stretches', () => {
    const share = 0.5;
    const cosBest = Math.cos(Math.atan(1 / polar.ratio));
    const dragOverWeight = (v: number) => {
      const u2 = (v / polar.speed) ** 2;
      return (cosBest / (2 * polar.ratio)) * (u2 + share / (cosBest ** 2 * u2));
    };
    const pieces = 20_000;
    const dv = (23 - 17) / pieces;
    let sum = 0;
    for (let i = 0; i < pieces; i++) {
      const v = 17 + (i + 0.5) * dv;
      sum += (v * dv) / (g * dragOverWeight(v));
    }
    expect(slowingDistance(polar, { approach: 23, touchdown: 17 }, share)).toBeCloseTo(sum, 4);
  });
});
