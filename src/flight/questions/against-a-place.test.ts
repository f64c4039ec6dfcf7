import { describe, expect, it } from 'vitest';
import { lessAgainstFirst, type Rejection } from './against-a-place.ts';

const far = (short: number): Rejection => ({ why: 'out-of-reach', short });
const tooShort = (short: number): Rejection => ({ why: 'too-short', short, roll: 100 });
const hedge = (clearance: number): Rejection => ({
  why: 'obstacle',
  what: 'hedge',
  clearance,
  limit: 15,
  grade: clearance > 0 ? 'beyond-good-practice' : 'not-to-be-flown',
});
const across: Rejection = { why: 'crosswind', value: 6, limit: 5, grade: 'not-to-be-flown' };
const behind = (value: number): Rejection => ({
  why: 'tailwind',
  value,
  limit: 2.5,
  grade: 'beyond-good-practice',
});

/** From the one with least against it to the one with most. */
const inOrder: readonly (readonly [string, readonly Rejection[]])[] = [
  ['nothing', []],
  ['a little more tailwind than usual', [behind(3)]],
  ['much more of it', [behind(5)]],
  ['the same, and a hedge passed near', [behind(5), hedge(12)]],
  ['a hedge passed nearer than half of the least', [hedge(5)]],
  ['1.5 m too short, with a hedge near and wind behind', [tooShort(1.5), hedge(1), behind(4)]],
  ['a fifth more crosswind than the limit', [across]],
  ['half of the roll too short', [tooShort(50)]],
  ['a hedge met at its top', [hedge(0)]],
  ['a hedge met low down', [hedge(-8)]],
  ['a metre out of reach', [far(1)]],
  ['900 m out of reach, and nothing else', [far(900)]],
  ['no way there at all', [far(Number.POSITIVE_INFINITY)]],
];

describe('what decides between two places', () => {
  it.each(inOrder)('%s is against itself no more and no less', (_, reasons) => {
    expect(lessAgainstFirst(reasons, [...reasons])).toBe(0);
  });

  it.each(
    inOrder.slice(1).map(([name, reasons], i) => [inOrder[i]![0], name, inOrder[i]![1], reasons] as const),
  )('%s comes before %s', (_less, _more, less, more) => {
    expect(lessAgainstFirst(less, more)).toBeLessThan(0);
    expect(lessAgainstFirst(more, less)).toBeGreaterThan(0);
  });

  it('is the next reason where the gravest are alike, and how many there are only where all are', () => {
    expect(lessAgainstFirst([far(9), tooShort(1)], [far(9), tooShort(2)])).toBeLessThan(0);
    expect(lessAgainstFirst([far(9)], [far(9), tooShort(2)])).toBeLessThan(0);
    expect(lessAgainstFirst([far(8), tooShort(80), across], [far(9)])).toBeLessThan(0);
  });
});
