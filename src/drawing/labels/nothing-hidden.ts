import { expect } from 'vitest';
import type { Drawing, DrawingBoard } from '../kit/drawing.ts';
import { boxesOverlap, contains, grown, segmentMeetsBox } from '../kit/geometry.ts';
import { linesIn, shapesIn, textsOf } from '../kit/svg-reading.ts';

// For tests.

/**
 * Expects every text to be on the paper, at least 7 points large, and over no other text, no line and no mark of the
 * groups.
 */
export function expectNothingHidden(
  { svg, width, height }: Drawing,
  board: DrawingBoard,
  groups: { readonly lines: readonly string[]; readonly shapes: readonly string[] },
): void {
  const texts = textsOf(svg, board);
  const lines = groups.lines.flatMap((group) => linesIn(svg, group));
  const shapes = groups.shapes.flatMap((group) => shapesIn(svg, group));
  expect(texts.length).toBeGreaterThan(5);
  for (const [index, text] of texts.entries()) {
    expect(contains({ x: 0, y: 0, width, height }, text.box), `${text.text} is on the paper`).toBe(true);
    expect(text.size).toBeGreaterThanOrEqual((7 / 72) * 25.4);
    for (const other of texts.slice(index + 1)) {
      expect(boxesOverlap(text.box, other.box), `${text.text} over ${other.text}`).toBe(false);
    }
    const crossed = lines.filter((line) => segmentMeetsBox(line, grown(text.box, line.halfWidth)));
    expect(crossed, `${text.text} over a line`).toEqual([]);
    expect(
      shapes.filter((box) => boxesOverlap(box, text.box)),
      `${text.text} over a mark`,
    ).toEqual([]);
  }
}
