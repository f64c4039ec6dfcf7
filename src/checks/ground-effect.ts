import { inducedDragReduction } from '../flight/aircraft/ground-effect.ts';
import { input } from './published.ts';
import type { FormPoint, Topic } from './topic.ts';

export const groundEffect: Topic = {
  heading: 'Ground effect',
  rowTopics: ['8_ground_effect'],
  quantities: {
    'induced-drag reduction': (row) => 100 * inducedDragReduction(input(row, 'h/b')),
  },
  forms: {
    ge_wies: () => pointsOf([0.04, 0.07, 0.1, 0.15, 0.2, 0.25], 4, (h) => (1 - 1.32 * h) / (1.05 + 7.4 * h)),
    ge_exp: () => pointsOf([0.1, 0.15, 0.25, 0.4, 0.6, 1], 3, (h) => Math.exp(-2.48 * (2 * h) ** 0.768)),
  },
};

/** A published form of the reduction, as a share by height over span, beside ours; `allowed` in percentage points. */
function pointsOf(
  heights: readonly number[],
  allowed: number,
  form: (heightOverSpan: number) => number,
): FormPoint[] {
  return heights.map((height) => ({
    inputs: `wing at ${height} of the span`,
    theirs: 100 * form(height),
    ours: 100 * inducedDragReduction(height),
    allowed,
    unit: '%',
  }));
}
