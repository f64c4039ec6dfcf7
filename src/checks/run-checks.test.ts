import { describe, expect, it } from 'vitest';
import { type AllChecks, allAgree, summaryLine, summaryOf } from './all-checks.ts';
import { rowOf } from './published.ts';
import { compared } from './run-checks.ts';

describe('a published row beside ours', () => {
  const right = rowOf('xw_phak_head');
  const wrong = rowOf('nz_72_61');

  it('agrees within its allowance, and disagrees a hair beyond it', () => {
    expect(compared('', right, [22.5]).verdict).toBe('agrees');
    expect(compared('', right, [22.51]).verdict).toBe('disagrees');
    expect(compared('', right, [21.49]).verdict).toBe('disagrees');
    expect(compared('', right, [22, 22]).verdict).toBe('disagrees');
    expect(compared('', right, [Number.NaN]).verdict).toBe('disagrees');
  });

  it('is named as printed wrong only where ours is what the document itself should have had', () => {
    expect(compared('', wrong, [70.53]).verdict).toBe('printed-wrong');
    expect(compared('', wrong, [72]).verdict).toBe('disagrees');
    expect(compared('', wrong, [71.2]).verdict).toBe('disagrees');
    expect(compared('', wrong, [Number.NaN]).verdict).toBe('disagrees');
  });

  it('needs only one point of several to disagree', () => {
    const result = compared('', right, [22]);
    const checks: AllChecks = {
      published: [result, compared('', right, [30])],
      flown: [],
      trade: [],
    };
    const summary = summaryOf(checks);
    expect(summary).toMatchObject({ rows: 1, agree: 0, disagree: 1 });
    expect(allAgree(summary)).toBe(false);
    expect(summaryLine(summary)).toContain('1 disagree');
  });
});

it('a figure of the trade that an aircraft does not fit is no disagreement', () => {
  const trade = { row: rowOf('pp_360_dw'), aircraft: 'A', wind: undefined, ours: 1400, fits: false };
  const summary = summaryOf({ published: [], flown: [], trade: [trade] });
  expect(summary).toMatchObject({ rows: 1, trade: 1, tradeUnfit: 1, disagree: 0 });
  expect(allAgree(summary)).toBe(true);
});
