import type { Root } from 'mdast';
import { describe, expect, it } from 'vitest';
import { typedQuantities } from '../src/lesson/typed-quantities.ts';
import { planFigures } from './plan-figures.ts';
import { feetAndKnots, flyTrial, sayIn } from './trial-packet.ts';

const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;

/** The quantity in a text, in SI. */
function quantityIn(text: string): number {
  const position = {
    start: { line: 1, column: 1, offset: 0 },
    end: { line: 1, column: 1, offset: text.length },
  };
  const tree: Root = {
    type: 'root',
    children: [{ type: 'paragraph', children: [{ type: 'text', value: text, position }] }],
  };
  return typedQuantities(tree, text)[0]!.value;
}

describe('the figures of a flight that a directive prints', () => {
  it.each([
    ['feet and knots', feetAndKnots],
    ['metric', metric],
  ] as const)('are those that the directive prints, to its step: %s', (_, units) => {
    const plan = flyTrial();
    const figures = planFigures(plan, units).filter(({ value, step }) => value >= step);
    expect(figures.length).toBeGreaterThan(20);
    for (const { directive, value, step } of figures) {
      const printed = quantityIn(sayIn(directive, plan, units));
      // An edge is printed to the next step on its safe side, anything else to the nearest.
      const most = /^:(gate|ground)/.test(directive) ? step : step / 2;
      expect(Math.abs(printed - value), directive).toBeLessThanOrEqual(most * 1.001);
    }
  });
});
