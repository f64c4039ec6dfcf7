import { describe, expect, it } from 'vitest';
import { clearanceOf } from './clearance.ts';

const wall = { what: 'wall', along: 0, across: 0, width: 20, height: 30 };
const wing = { span: 10, aboveWheels: 2 };
const asked = { over: 60, near: 15, nearInLanding: 10 };

/** Level at a height along a straight line, every half metre. */
function line(from: readonly [number, number], to: readonly [number, number], height: number, bank = 0) {
  const heading = Math.atan2(to[1] - from[1], to[0] - from[0]);
  return Array.from({ length: 401 }, (_, i) => ({
    along: from[0] + ((to[0] - from[0]) * i) / 400,
    across: from[1] + ((to[1] - from[1]) * i) / 400,
    height,
    heading,
    bank,
    landing: false,
  }));
}

describe('the distance of a path from a wall', () => {
  it('is the height over its top where it passes over, and more is asked for there', () => {
    const passed = clearanceOf(line([-100, 0], [100, 0], 42), wing, wall, asked);
    expect(passed.distance).toBeCloseTo(12, 9);
    expect(passed.asked).toBe(60);
  });

  it('is that of the wing tip from its end where it passes beside', () => {
    const beside = clearanceOf(line([-100, 25], [100, 25], 20), wing, wall, asked);
    expect(beside.distance).toBeCloseTo(10, 9);
    expect(beside.asked).toBe(15);
    const higher = clearanceOf(line([-100, 18], [100, 18], 34), wing, wall, asked);
    expect(higher.distance).toBeCloseTo(5, 9);
  });

  it('is nought where a wing tip meets it, whichever way the leg goes', () => {
    const distance = (path: ReturnType<typeof line>) => clearanceOf(path, wing, wall, asked).distance;
    expect(distance(line([-100, 14.9], [100, 14.9], 20))).toBe(0);
    expect(distance(line([4.9, 100], [4.9, -100], 20))).toBe(0);
    expect(distance(line([5.1, 100], [5.1, -100], 20))).toBeCloseTo(0.1, 9);
  });

  it('counts the low wing of a bank', () => {
    const level = clearanceOf(line([-100, 0], [100, 0], 40), wing, wall, asked).distance;
    const banked = clearanceOf(line([-100, 0], [100, 0], 40, 1), wing, wall, asked).distance;
    expect(level - banked).toBeCloseTo(5 * Math.sin(1) - 2 * Math.cos(1), 9);
  });
});
