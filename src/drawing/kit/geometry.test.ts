import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  around,
  between,
  boxesOverlap,
  boxOf,
  contains,
  distance,
  fromSegment,
  grown,
  nearestInBox,
  pageVector,
  segmentMeetsBox,
  segmentsCross,
  segmentsOf,
  shifted,
  simplified,
  unit,
} from './geometry.ts';

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const segment = fc.record({ from: point, to: point });
const box = { x: -10, y: -5, width: 25, height: 12 };
const inside = ({ x, y }: { x: number; y: number }, by = 0) =>
  x >= box.x - by && x <= box.x + box.width + by && y >= box.y - by && y <= box.y + box.height + by;

describe('directions on the page', () => {
  it('are clockwise from up, as bearings are', () => {
    expect(pageVector(0)).toEqual({ x: 0, y: -1 });
    expect(pageVector(Math.PI / 2).x).toBeCloseTo(1, 12);
    expect(pageVector(Math.PI).y).toBeCloseTo(1, 12);
  });

  it('have the length of one, or none from a point to itself', () => {
    expect(unit({ x: 1, y: 2 }, { x: 4, y: -2 })).toEqual({ x: 0.6, y: -0.8 });
    expect(unit({ x: 1, y: 2 }, { x: 1, y: 2 })).toEqual({ x: 0, y: 0 });
    expect(shifted({ x: 1, y: 2 }, { x: 0.6, y: -0.8 }, 5)).toEqual({ x: 4, y: -2 });
  });
});

describe('boxes on the page', () => {
  it('lie about a point, about some points, and about a smaller box', () => {
    expect(around({ x: 5, y: 8 }, 3)).toEqual({ x: 2, y: 5, width: 6, height: 6 });
    const points = [
      { x: 4, y: 9 },
      { x: -1, y: 3 },
      { x: 2, y: 12 },
    ];
    expect(boxOf(points)).toEqual({ x: -1, y: 3, width: 5, height: 9 });
    expect(grown(box, 3)).toEqual({ x: -13, y: -8, width: 31, height: 18 });
    expect(grown(box, -3)).toEqual({ x: -7, y: -2, width: 19, height: 6 });
  });

  it('contain what is inside on every side, their own edge too', () => {
    expect(contains(box, box)).toBe(true);
    expect(contains(box, grown(box, -1))).toBe(true);
    for (const side of [{ x: -10.1 }, { y: -5.1 }, { width: 25.1 }, { height: 12.1 }]) {
      expect(contains(box, { ...box, ...side })).toBe(false);
    }
  });

  it('overlap where they share more than an edge', () => {
    const beside = { x: 15, y: 0, width: 4, height: 4 };
    expect(boxesOverlap(box, beside)).toBe(false);
    expect(boxesOverlap(beside, box)).toBe(false);
    expect(boxesOverlap(box, { ...beside, x: 14.9 })).toBe(true);
    expect(boxesOverlap({ ...beside, x: 14.9 }, box)).toBe(true);
    for (const y of [7, -9]) {
      const apart = { x: 0, y, width: 4, height: 4 };
      expect(boxesOverlap(box, apart)).toBe(false);
      expect(boxesOverlap(apart, box)).toBe(false);
      expect(boxesOverlap(box, { ...apart, y: y - Math.sign(y) * 0.1 })).toBe(true);
    }
  });

  it('have a nearest point: the point itself where that is inside', () => {
    expect(nearestInBox(box, { x: 1, y: 2 })).toEqual({ x: 1, y: 2 });
    expect(nearestInBox(box, { x: -20, y: 30 })).toEqual({ x: -10, y: 7 });
    expect(nearestInBox(box, { x: 20, y: -30 })).toEqual({ x: 15, y: -5 });
  });
});

describe('page geometry', () => {
  it('finds a segment along an edge or upright beside a box', () => {
    const upright = (x: number) => ({ from: { x, y: -20 }, to: { x, y: 20 } });
    expect([-10.5, -10, 3, 15, 15.5].map((x) => segmentMeetsBox(upright(x), box))).toEqual([
      ...[false, true, true, true, false],
    ]);
    expect([-11.5, -10.5, 15.5, 16.5].map((x) => segmentMeetsBox(upright(x), box, 1))).toEqual([
      ...[false, true, true, false],
    ]);
    // Past the corner, wholly to no side.
    expect(segmentMeetsBox({ from: { x: 10, y: 20 }, to: { x: 40, y: 0 } }, box)).toBe(false);
  });

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
    // Away from the origin; one that ends short of the other; one that only touches it.
    expect(segmentsCross(line(10, 20, 14, 24), line(10, 24, 14, 20))).toBe(true);
    expect(segmentsCross(line(10, 20, 14, 24), line(13, 20, 16, 22))).toBe(false);
    expect(segmentsCross(line(13, 20, 16, 22), line(10, 20, 14, 24))).toBe(false);
    expect(segmentsCross(line(10, 20, 14, 24), line(12, 22, 14, 20))).toBe(false);
    expect(segmentsCross(line(12, 22, 14, 20), line(10, 20, 14, 24))).toBe(false);
  });

  it('has as many segments as a line has, end to end', () => {
    const [a, b, c] = [1, 2, 4].map((x) => ({ x, y: x * x }));
    expect(segmentsOf([a!, b!, c!])).toEqual([
      { from: a, to: b },
      { from: b, to: c },
    ]);
  });

  it('leaves out what lies on a straight line, and nothing of a corner', () => {
    const row = [0, 1, 2, 3, 4].map((x) => ({ x, y: 0 }));
    expect(simplified(row, 0.01)).toEqual([row[0], row[4]]);
    expect(simplified(row.slice(0, 2), 5)).toEqual(row.slice(0, 2));
    const corner = [...row, { x: 4, y: 3 }, { x: 4, y: 9 }];
    expect(simplified(corner, 0.01)).toEqual([row[0], row[4], { x: 4, y: 9 }]);
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
