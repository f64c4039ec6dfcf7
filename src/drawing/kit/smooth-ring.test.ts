import { describe, expect, it } from 'vitest';
import { distance, fromSegment, type Point, segmentsOf } from './geometry.ts';
import { smoothRing } from './smooth-ring.ts';

/** Points every 5° as seen from a place off the middle, the way the outline of a reach has them. */
function circleSeenFrom(off: number, radius: number): Point[] {
  const points = Array.from({ length: 72 }, (_, index) => {
    const angle = (index * Math.PI) / 36;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    const far = -off * x + Math.sqrt(radius ** 2 - (off * y) ** 2);
    return { x: off + far * x, y: far * y };
  });
  return [...points, points[0]!];
}

describe('a smooth ring', () => {
  const circle = circleSeenFrom(20, 32);
  const middle = { x: 0, y: 0 };

  it('goes through every point of the ring, and closes', () => {
    const smooth = smoothRing(circle);
    const segments = segmentsOf(smooth);
    for (const point of circle)
      expect(Math.min(...segments.map((each) => fromSegment(point, each)))).toBeLessThan(1e-9);
    expect(distance(smooth[0]!, smooth.at(-1)!)).toBeLessThan(1e-9);
  });

  it('lies on the circle that the points were taken from, to a hair, where their chords leave it', () => {
    const off = (points: readonly Point[]) =>
      Math.max(
        ...segmentsOf(points).map(({ from, to }) =>
          Math.abs(32 - distance(middle, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 })),
        ),
      );
    expect(off(circle)).toBeGreaterThan(0.05);
    expect(off(smoothRing(circle))).toBeLessThan(0.01);
  });

  it('keeps a corner, and straight sides straight', () => {
    const square = [0, 1, 2, 3, 4].map((side) => ({
      x: side === 1 || side === 2 ? 10 : 0,
      y: side === 2 || side === 3 ? 10 : 0,
    }));
    for (const { x, y } of smoothRing(square)) {
      expect(Math.min(x, y, 10 - x, 10 - y)).toBeCloseTo(0, 9);
    }
  });
});
