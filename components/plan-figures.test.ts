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
  ] as const)('are those that the directive prints: %s', (_, units) => {
    const plan = flyTrial();
    const figures = planFigures(plan, units).filter(({ value, step }) => value >= step);
    expect(figures.length).toBeGreaterThan(20);
    for (const { directive, value, step, printed } of figures) {
      expect(quantityIn(sayIn(directive, plan, units)), directive).toBeCloseTo(printed, 6);
      expect(Math.abs(printed - value), directive).toBeLessThan(step);
    }
  });

  it('have the edge of a band and a limit as they are printed, not the nearest step', () => {
    const plan = flyTrial();
    const ft = (height: number) => height * 0.3048;
    const gates = [{ at: 'final' as const, low: ft(301), plan: ft(400), high: ft(609) }];
    const aircraft = { ...plan.aircraft, limits: { wind: 9.2, crosswind: 4.6 } };
    const odd = { ...plan, gates, aircraft };
    for (const [directive, figure] of [
      [':gate[final]{edge=low}', '310 ft'],
      [':gate[final]{edge=high}', '600 ft'],
      [':aircraft[wind-limit]', '17 kt'],
      [':aircraft[crosswind-limit]', '8 kt'],
    ] as const) {
      expect(sayIn(directive, odd)).toBe(figure);
      const known = planFigures(odd, feetAndKnots).find((each) => each.directive === directive)!;
      expect(known.printed, directive).toBeCloseTo(quantityIn(figure), 6);
    }
  });
});
