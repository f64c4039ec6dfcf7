import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeKind, parseQuantity, quantityKinds } from '../units/quantity.ts';
import { parseSidedAngle } from '../units/sided-angle.ts';
import { parseWind } from '../units/wind-text.ts';
import { directionForm, quantityForm, sidedAngleForm, type WrittenForm, windForm } from './written-form.ts';

/** As an editor does: some compile a pattern with the `u` flag, some without. */
function matches({ pattern }: WrittenForm, text: string): boolean {
  const [plain, unicode] = [new RegExp(pattern!).test(text), new RegExp(pattern!, 'u').test(text)];
  expect(plain).toBe(unicode);
  return plain;
}

function reads(read: () => unknown): boolean {
  try {
    read();
    return true;
  } catch {
    return false;
  }
}

const units = [...new Set(quantityKinds.flatMap((kind) => describeKind(kind).units))];
const space = fc.constantFrom('', ' ', '  ');
const digits = fc.constantFrom(
  '7',
  '12',
  '007',
  '1,000',
  '1,00',
  '1.5',
  '.5',
  '5.',
  '1,234.25',
  '1.000,5',
  'x',
  '',
);
const sign = fc.constantFrom('', '+', '-', '−', '--');
const unit = fc.constantFrom(...units, ...units.map((name) => name.toUpperCase()), 'knots', '');
const written = fc.tuple(sign, space, digits, space, unit, space).map((parts) => parts.join(''));

describe('the pattern of a quantity', () => {
  it.each(quantityKinds)('takes for %s what is read as one, and nothing else', (kind) => {
    const form = kind === 'bearing' ? directionForm : quantityForm(kind, '-9 x', '9 x');
    fc.assert(
      fc.property(written, (text) => {
        // Whether a minus is allowed is a matter of ranges, and so is a direction beyond 360 degrees.
        fc.pre(!/[-−]/.test(text) && !(kind === 'bearing' && /\d,\d/.test(text)));
        expect(matches(form, text)).toBe(reads(() => parseQuantity(text, kind)));
      }),
      { numRuns: 1000 },
    );
  });

  it('takes a minus where the least that is possible lies below zero, and only there', () => {
    expect(matches(quantityForm('length', '-10 km', '10 km'), '−140 m')).toBe(true);
    expect(matches(quantityForm('temperature', '-60 C', '60 C'), '-5 C')).toBe(true);
    expect(matches(quantityForm('speed', '10 kt', '150 kt'), '-42 kt')).toBe(false);
  });
});

describe('the pattern of a wind', () => {
  it.each([
    '210/12kt',
    '210°/12 kt',
    '030 deg / 6.5 m/s',
    'calm',
    'CALM',
    '210/12',
    '12kt',
    '210-12kt',
    'N/12kt',
    '210/-5kt',
  ])('takes `%s` as the reader does', (text) => {
    expect(matches(windForm, text)).toBe(reads(() => parseWind(text)));
  });
});

describe('the pattern of an angle with its side', () => {
  it.each(['2 deg W', '2°w', '51.2 deg E', '2 deg', '-2 deg W', '2 W', '2 deg N', 'W'])(
    'takes `%s` as the reader does',
    (text) => {
      const form = sidedAngleForm('EW', 'up to 180 deg E or W');
      expect(matches(form, text)).toBe(reads(() => parseSidedAngle(text, 'EW')));
    },
  );
});
