import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import { type LimitKind, type ToldUnit, tellingApart } from './telling-apart.ts';

const sizes: Partial<Record<ToldUnit, number>> = {
  ft: metresPerFoot,
  kt: metresPerSecondPerKnot,
  '°': radiansPerDegree,
};
function told(value: number, limit: number, unit: ToldUnit, kind: LimitKind, margin = false) {
  const size = sizes[unit] ?? 1;
  const choices = margin ? ({ value: 'margin' } as const) : {};
  const { value: v, limit: l } = tellingApart(
    { value: value * size, limit: limit * size },
    unit,
    kind,
    choices,
  );
  return [v, l].map((each) => each.replaceAll('\u00a0', ' '));
}

describe('a value beside its limit', () => {
  it('is rounded as everywhere where that shows the side', () => {
    expect(told(13.4, 9, 'kt', 'most')).toEqual(['13 kt', '9 kt']);
    expect(told(115, 300, 'ft', 'least')).toEqual(['120 ft', '300 ft']);
    expect(told(50, 45, '°', 'most')).toEqual(['50°', '45°']);
  });
  it('has the digit that tells where it does not', () => {
    expect(told(8.2, 8.1, 'kt', 'most')).toEqual(['8.2 kt', '8.1 kt']);
    expect(told(9.3, 9, 'kt', 'most')).toEqual(['9.3 kt', '9 kt']);
    expect(told(297, 300, 'ft', 'least')).toEqual(['297 ft', '300 ft']);
    expect(told(299.94, 300, 'ft', 'least')).toEqual(['299.9 ft', '300 ft']);
    expect(told(45.2, 45, '°', 'most')).toEqual(['45.2°', '45°']);
    expect(told(1.298, 1.3, 'times', 'least')).toEqual(['1.298 times', '1.30 times']);
  });
  it('never has a limit on its unsafe side', () => {
    expect(told(12, 8.9, 'kt', 'most')).toEqual(['12 kt', '8 kt']);
    expect(told(120, 321, 'ft', 'least')).toEqual(['120 ft', '330 ft']);
  });
  it('never has a margin rounded up', () => {
    expect(told(44.9, 50, 'ft', 'least', true)).toEqual(['44 ft', '50 ft']);
    expect(told(1.209, 1.3, 'times', 'least', true)).toEqual(['1.20 times', '1.30 times']);
    expect(told(-2.1, 50, 'ft', 'least', true)).toEqual(['−3 ft', '50 ft']);
  });
  it('reads alike where it is alike', () => {
    expect(told(9, 9, 'kt', 'most')).toEqual(['9 kt', '9 kt']);
    expect(told(300, 300 + 1e-9, 'ft', 'least')).toEqual(['300 ft', '300 ft']);
    // Nearer than the finest step that is tried, though rounding would part them.
    expect(told(8.0004, 8.001, 'kt', 'most')).toEqual(['8 kt', '8 kt']);
  });
  it('that is not a number is refused', () =>
    expect(() => tellingApart({ value: Number.NaN, limit: 1 }, 'kt', 'most')).toThrow(RangeError));

  const amount = fc.double({ min: 1, max: 2000, noNaN: true });
  const near = fc.double({ min: -3, max: 3, noNaN: true });
  const read = (figure: string | undefined) => Number(/[\d,.]+/.exec(figure!)![0].replace(',', ''));
  for (const kind of ['most', 'least'] as const) {
    it(`compares as printed as it does unprinted, with a limit that is ${kind}`, () => {
      fc.assert(
        fc.property(amount, near, fc.constantFrom<ToldUnit>('ft', 'kt', '°', 'times'), (limit, by, unit) => {
          fc.pre(Math.abs(by) > 0.02 && limit + by > 0);
          const [value, printed] = told(limit + by, limit, unit, kind);
          expect(Math.sign(read(value) - read(printed))).toBe(Math.sign(by));
          if (kind === 'most') expect(read(printed)).toBeLessThanOrEqual(limit + 1e-4);
          else expect(read(printed)).toBeGreaterThanOrEqual(limit - 1e-4);
        }),
      );
    });
  }
});
