import { describe, expect, it } from 'vitest';
import type { Phase, Plan } from '../../flight/terms/plan.ts';
import type { DrawingBoard } from '../kit/drawing.ts';
import { drawnPattern } from '../shared/test-plans.ts';
import { phaseRows } from './profile-phases.ts';

const plan = drawnPattern({ circuit: 'left', spacing: 400, pastAbeam: 220, radius: 90, height: 300 });
/** Every letter 1 mm wide. */
const board: Pick<DrawingBoard, 'measure'> = { measure: (text) => text.length };
const rows = (phases: readonly [Phase, number, number][]) => {
  const flown = phases.flatMap(([phase, from, to]) => [from, to].map((x) => ({ phase, x })));
  const track = flown.map(({ phase }) => ({ ...plan.track[0]!, phase }));
  const xs = flown.map(({ x }) => x);
  return phaseRows({ ...plan, track } as Plan, board as DrawingBoard, xs, 120);
};

describe('the names of the phases', () => {
  it('stand in one row where there is room', () => {
    const placed = rows([
      ['downwind', 0, 40],
      ['base-turn', 40, 60],
      ['base', 60, 80],
    ]);
    expect(placed.map(({ text, row }) => [text, row])).toEqual([
      ['downwind', 0],
      ['base turn', 0],
      ['base', 0],
    ]);
  });

  it('take a lower row where they would run into each other, and a line leads there', () => {
    const placed = rows([
      ['downwind', 0, 40],
      ['base-turn', 40, 51],
      ['base', 51, 54],
      ['final-turn', 54, 80],
    ]);
    expect(placed[2]!.row).toBe(1);
    const { leader } = placed[2]!;
    expect(leader).toBeGreaterThanOrEqual(51);
    expect(leader).toBeLessThanOrEqual(54);
    for (const { at, text, row } of placed) {
      if (row === 0) expect(Math.abs(at - leader!)).toBeGreaterThan(text.length / 2);
    }
  });

  it('are left out where only a line through another name would reach them', () => {
    const placed = rows([
      ['downwind', 0, 40],
      ['base-turn', 60, 62],
      ['base', 62, 63],
      ['final-turn', 63, 64],
    ]);
    expect(placed.map(({ text }) => text)).toEqual(['downwind', 'base turn', '', '']);
  });
});
