import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesOverlap, contains, grown, segmentMeetsBox } from '../kit/geometry.ts';
import type { LabelRequest, Surroundings } from './label.ts';
import { placeLabels } from './label-placement.ts';

const frame = { x: 0, y: 0, width: 100, height: 80 };
const open: Surroundings = { frame, boxes: [], lines: [] };
const label = (id: string, x: number, y: number, more: Partial<LabelRequest> = {}): LabelRequest => ({
  id,
  anchor: { x, y },
  radius: 1,
  width: 14,
  height: 5,
  reach: 60,
  ...more,
});

describe('label placement', () => {
  it('puts a label beside its mark, on the side it is wanted, without a leader', () => {
    const [right, left] = placeLabels(
      [label('a', 50, 20, { prefer: { x: 1, y: 0 } }), label('b', 50, 60, { prefer: { x: -1, y: 0 } })],
      open,
    );
    expect(right!.side).toBe('start');
    expect(left!.side).toBe('end');
    expect(right!.leader).toBeUndefined();
    expect(right!.box.x).toBeGreaterThan(51);
  });

  it('keeps off a line, and leads back to the mark where it must stand away', () => {
    const crowd = [46, 48, 50, 52, 54].map((x) => label(String(x), x, 40));
    const line = { from: { x: 0, y: 40 }, to: { x: 100, y: 40 }, halfWidth: 0.5 };
    const placed = placeLabels(crowd, { ...open, lines: [line] });
    expect(placed.every(({ clear }) => clear)).toBe(true);
    expect(placed.some(({ leader }) => leader)).toBe(true);
    for (const { box } of placed) expect(segmentMeetsBox(line, grown(box, 0.5))).toBe(false);
  });

  it('sets two labels so far apart that they are not read as one, where there is room', () => {
    for (const [dx, dy] of [
      [0, 3],
      [3, 0],
      [4, -2],
    ] as const) {
      const [one, other] = placeLabels([label('a', 50, 40), label('b', 50 + dx, 40 + dy)], open);
      const about = { ...one!.box, x: one!.box.x - 2, width: one!.box.width + 4 };
      const apart = { ...about, y: about.y - 1.8, height: about.height + 3.6 };
      expect(boxesOverlap(apart, other!.box)).toBe(false);
    }
  });

  it('leads away at a slant where an upright line would be taken for a thing that stands there', () => {
    const over = (y: number) => ({ from: { x: 0, y }, to: { x: 100, y }, halfWidth: 2.6 });
    const lines = [over(38), over(43)];
    const [upright, slanted] = [false, true].map(
      (slanted) =>
        placeLabels([label('a', 50, 40.4, { slanted, prefer: { x: 0, y: -1 } })], { ...open, lines })[0]!,
    );
    const lean = ({ leader }: ReturnType<typeof placeLabels>[number]) =>
      Math.abs(leader!.to.x - leader!.from.x) / Math.abs(leader!.to.y - leader!.from.y);
    expect(lean(upright!)).toBeLessThan(0.5);
    expect(lean(slanted!)).toBeGreaterThanOrEqual(0.5);
  });

  it('says so where there is no room', () => {
    const [placed] = placeLabels([label('a', 5, 5)], {
      frame: { x: 0, y: 0, width: 12, height: 12 },
      boxes: [],
      lines: [],
    });
    expect(placed!.clear).toBe(false);
  });

  it('hides nothing that it says is clear, and always finds the same places', () => {
    const place = fc.record({ x: fc.integer({ min: 2, max: 98 }), y: fc.integer({ min: 2, max: 78 }) });
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 9 }), place, place, (anchors, from, to) => {
        const requests = anchors.map(({ x, y }, index) => label(String(index), x, y));
        const surroundings = { ...open, lines: [{ from, to, halfWidth: 0.5 }] };
        const placed = placeLabels(requests, surroundings);
        expect(placeLabels(requests, surroundings)).toEqual(placed);
        const clear = placed.filter((one) => one.clear);
        for (const one of clear) {
          expect(contains(frame, one.box)).toBe(true);
          expect(segmentMeetsBox({ from, to }, grown(one.box, 0.5))).toBe(false);
          for (const other of clear) {
            if (other === one) continue;
            expect(boxesOverlap(one.box, other.box)).toBe(false);
            if (other.leader) expect(segmentMeetsBox(other.leader, one.box)).toBe(false);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
