import { describe, expect, it } from 'vitest';
import { published, rowOf } from './published.ts';
import {
  allowedText,
  asPrinted,
  differenceText,
  inputsText,
  publishedText,
  stepFor,
  unitTexts,
  widerThanRounding,
} from './row-words.ts';
import { runChecks } from './run-checks.ts';

describe('the words of a row', () => {
  it('say its inputs with their units', () => {
    expect(inputsText(rowOf('da_phak_da'))).toBe('elevation 5,883 ft, altimeter 30.1 inHg, 70 °F outside');
    for (const row of published.filter(({ inputs }) => typeof inputs === 'object')) {
      expect(inputsText(row)).not.toContain('_');
    }
  });

  it('give the published digits, and ours to a tenth of what is allowed', () => {
    const row = { ...rowOf('isa_ft_8000_sigma'), value: 0.786 };
    expect(publishedText(row, 0.786)).toBe('0.7860');
    expect(stepFor(0.786, 0.0001)).toBeCloseTo(0.00001, 12);
    expect(stepFor(7700, 75)).toBe(1);
    expect(stepFor(1609.344, 1e-9)).toBeCloseTo(0.001, 12);
  });

  it('have a real minus, a plus, and nought without a sign', () => {
    expect(differenceText(-0.34, 0.1)).toBe('−0.3');
    expect(differenceText(0.34, 0.1)).toBe('+0.3');
    expect(differenceText(-0.04, 0.1)).toBe('0');
    expect(differenceText(0.04, 0.1)).toBe('0');
  });

  it('set the signs of the data', () => {
    expect(asPrinted('45 x sqrt(3), 72 deg, 3 deg/s')).toBe('45 × sqrt(3), 72°, 3°/s');
    expect(unitTexts('deg, s')).toEqual(['°', '\u00a0s']);
    expect(allowedText(20, 1.5)).toBe('±1.5');
    expect(allowedText(1852, 1852e-9)).toBe('none');
  });
});

it('no row is allowed more than its last printed digit without a word why', () => {
  const unexplained = runChecks().filter(
    ({ row, theirs, allowed }) =>
      theirs.some((value, i) => widerThanRounding(value, allowed[i]!)) && row.note === '',
  );
  expect(unexplained.map(({ row }) => row.id)).toEqual([]);
});
