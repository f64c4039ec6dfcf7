import { describe, expect, it } from 'vitest';
import { createNodeBoard } from './node-board.ts';

describe('the drawing board under Node', () => {
  const board = createNodeBoard();

  it('gives an empty SVG root each time, and what is drawn on it comes out', () => {
    const first = board.createSvg();
    first.line(0, 0, 100, 0).stroke({ width: 0.2 });
    const second = board.createSvg();
    expect(first.svg()).toContain('<line');
    expect(second.svg()).not.toContain('<line');
    expect(second.svg()).toMatch(/^<svg/);
  });

  it('measures in the drawing face: every figure of Plex Sans is 600 of 1000 units wide', () => {
    // Read from the face's own hmtx table (zero to nine, all 600 units).
    expect(board.measure('1000', 3)).toBeCloseTo(4 * 0.6 * 3, 6);
  });

  it('grows with the size and the weight', () => {
    expect(board.measure('Base key', 6)).toBeCloseTo(2 * board.measure('Base key', 3), 9);
    expect(board.measure('Base key', 3, 'bold')).toBeGreaterThan(board.measure('Base key', 3));
    expect(board.measure('', 3)).toBe(0);
  });
});
