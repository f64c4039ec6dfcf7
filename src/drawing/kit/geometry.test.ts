import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, distance, fromSegment, segmentMeetsBox, segmentsCross, simplified } from './geometry.ts';

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const segment = fc.record({ from: point, to: point });
const box = { x: -10, y: -5, width: 25, height: 12 };
const inside = ({ x, y }: { x: number; y: number }, by = 0) =>
  x >= box.x - by && x <= box.x + box.width + by && y >= box.y - by && y <= box.y + box.height + by;

describe('page geometry', () => {
  it('finds a segment in a box wherever a point of it lies inside, and nowhere else', () => {
    fc.assert(
      fc.property(segment, fc.double({ min: 0, max: 5, noNaN: true }), (line, by) => {
        const steps = Array.from({ length: 2001 }, (_, index) => between(line, index / 2000));
        if (steps.some((at) => inside(at, by))) expect(segmentMeetsBox(line, box, by)).toBe(true);
        // A chord shorter than the steps may slip between them: look one step's length farther.
        else expect(segmentMeetsBox(line, box, by) && !steps.some((at) => inside(at, by + 0.1))).toBe(false);
      }),
    );
  });

  it('measures to the nearest point of a segment', () => {
    fc.assert(
      fc.property(segment, point, (line, at) => {
        const steps = Array.from({ length: 501 }, (_, index) => distance(between(line, index / 500), at));
        expect(Math.abs(Math.min(...steps) - fromSegment(at, line))).toBeLessThan(0.2);
      }),
    );
  });

  it('sees segments cross only where both ends of each lie on both sides of the other', () => {
    const line = (x1: number, y1: number, x2: number, y2: number) => ({
      from: { x: x1, y: y1 },
      to: { x: x2, y: y2 },
    });
    expect(segmentsCross(line(0, 0, 4, 4), line(0, 4, 4, 0))).toBe(true);
    expect(segmentsCross(line(0, 0, 4, 4), line(3, 0, 9, 1))).toBe(false);
    expect(segmentsCross(line(0, 0, 4, 0), line(0, 1, 4, 1))).toBe(false);
  });

  it('leaves out only points within the tolerance, and keeps the ends', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 40 }), (points) => {
        const kept = simplified(points, 2);
        expect(kept[0]).toEqual(points[0]);
        expect(kept.at(-1)).toEqual(points.at(-1));
        for (const at of points) {
          const off = kept.slice(1).map((to, index) => fromSegment(at, { from: kept[index]!, to }));
          expect(Math.min(...off)).toBeLessThanOrEqual(2 + 1e-9);
        }
      }),
    );
  });
});
