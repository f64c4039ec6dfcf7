import { describe, expect, it } from 'vitest';
import { groundRatio, speedToFly } from './speed-to-fly.ts';

/** The universal polar of the handbooks is the small-angle one, so the comparison is with a very flat glide. */
const flat = { speed: 25, ratio: 60 };
const trike = { speed: 21.6, ratio: 6.4 };

describe('the speed that goes farthest against the wind', () => {
  // Computed, not published: the least S/(X - w) on the universal polar, worked out apart from this project.
  it.each([
    [-0.4, 0.927, 1.415],
    [-0.2, 0.958, 1.204],
    [0.2, 1.06, 0.806],
    [0.4, 1.147, 0.628],
    [0.6, 1.272, 0.473],
  ])(
    'in a headwind of %f of the best-glide speed is %f of it, for %f of the best ratio',
    (wind, speed, share) => {
      const best = speedToFly(flat, wind * flat.speed, 1);
      expect(Math.abs(best / flat.speed - speed)).toBeLessThan(0.002);
      expect(Math.abs(groundRatio(flat, best, wind * flat.speed, 1) / flat.ratio - share)).toBeLessThan(
        0.002,
      );
    },
  );

  it('is roughly the best-glide speed and half the headwind (FAA-H-8083-13, from memory), never more', () => {
    for (const polar of [flat, trike]) {
      for (const share of [0.1, 0.2, 0.3, 0.4, 0.5, 0.6]) {
        const added = speedToFly(polar, share * polar.speed, 1) / polar.speed - 1;
        expect(added).toBeLessThan(share / 2);
        expect(added).toBeGreaterThan(share / 2 - 0.06);
      }
    }
  });

  it.each([flat, trike])('is the best glide in no wind, for $ratio:1', (polar) => {
    expect(speedToFly(polar, 0, 1) / polar.speed).toBeCloseTo(1, 5);
    expect(groundRatio(polar, polar.speed, 0, 1)).toBeCloseTo(polar.ratio, 9);
  });

  it('rises with the headwind, and is slower than the best glide with a tailwind', () => {
    const speeds = [-10, -5, 0, 5, 10].map((wind) => speedToFly(trike, wind, 1));
    for (let i = 1; i < speeds.length; i++) expect(speeds[i]).toBeGreaterThan(speeds[i - 1]!);
    expect(speeds[1]).toBeLessThan(trike.speed);
  });

  it('leaves no other speed that goes farther', () => {
    for (const wind of [-8, 0, 6, 12]) {
      const best = groundRatio(trike, speedToFly(trike, wind, 1.03), wind, 1.03);
      for (let eas = 0.75 * trike.speed; eas < 2 * trike.speed; eas += 0.05) {
        expect(groundRatio(trike, eas, wind, 1.03)).toBeLessThanOrEqual(best + 1e-9);
      }
    }
  });

  it('in thin air is that for a wind as much weaker as the true airspeed is more', () => {
    expect(speedToFly(trike, 8.8, 1.1)).toBeCloseTo(speedToFly(trike, 8, 1), 4);
  });
});

describe('distance over the ground for height', () => {
  it('at the best glide is E - (w/V) sqrt(1 + E^2)', () => {
    for (const wind of [-9, 0, 4, 9]) {
      const { speed, ratio } = trike;
      const exact = ratio - (wind / speed) * Math.sqrt(1 + ratio * ratio);
      expect(groundRatio(trike, speed, wind, 1)).toBeCloseTo(exact, 9);
    }
  });

  it('at 10:1, 60 kt and 20 kt of headwind is the 6.67 of small angles, less what they leave out', () => {
    // Computed, not published: air ratio x groundspeed/airspeed. Exact: 10 - sqrt(101)/3 = 6.650.
    const ratio = groundRatio({ speed: 60, ratio: 10 }, 60, 20, 1);
    expect(Math.abs(ratio - 6.667)).toBeLessThan(0.02);
    expect(ratio).toBeCloseTo(10 - Math.sqrt(101) / 3, 9);
  });
});
