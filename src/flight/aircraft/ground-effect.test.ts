import { describe, expect, it } from 'vitest';
import { inducedDragReduction } from './ground-effect.ts';

describe('the induced drag that ground effect takes away', () => {
  // FAA-H-8083-25B, chapter 5, ground effect: 1.4 %, 23.5 % and 47.6 %.
  it.each([
    [1, 0.014],
    [0.25, 0.235],
    [0.1, 0.476],
  ])('at %d spans is exactly %d', (heightOverSpan, reduction) => {
    expect(inducedDragReduction(heightOverSpan)).toBeCloseTo(reduction, 12);
  });

  it('grows all the way to the ground and fades all the way up', () => {
    for (let height = 0.02; height < 4; height *= 1.05) {
      expect(inducedDragReduction(height)).toBeLessThan(inducedDragReduction(height / 1.05));
    }
  });

  it('is a share: more than nothing, less than all, also on the ground', () => {
    for (const height of [0, 0.001, 0.01, 0.05]) {
      expect(inducedDragReduction(height)).toBeGreaterThan(0.5);
      expect(inducedDragReduction(height)).toBeLessThan(1);
    }
    expect(inducedDragReduction(3)).toBeLessThan(0.001);
    expect(inducedDragReduction(3)).toBeGreaterThanOrEqual(0);
  });
});
