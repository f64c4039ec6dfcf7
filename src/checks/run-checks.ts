import { densityAltitude, standardAtmosphere } from './air.ts';
import { glideRatio, ratesOfDescent } from './glide.ts';
import { groundEffect } from './ground-effect.ts';
import { landingRoll } from './landing-roll.ts';
import { allowance, numbersOf, type Published, published } from './published.ts';
import type { Topic } from './topic.ts';
import { loadAndStall, turnRateAndRadius } from './turns.ts';
import { unitFactors } from './units.ts';
import { windComponents, windProfile, windTriangles } from './wind.ts';

/** In the order of the page. */
export const topics: readonly Topic[] = [
  standardAtmosphere,
  densityAltitude,
  windComponents,
  windTriangles,
  windProfile,
  glideRatio,
  ratesOfDescent,
  loadAndStall,
  turnRateAndRadius,
  groundEffect,
  landingRoll,
  unitFactors,
];

export type Verdict = 'agrees' | 'printed-wrong' | 'disagrees';

/** A published row with our values beside it, in the row's unit. */
export interface CheckResult {
  /** Heading of its topic. */
  readonly heading: string;
  readonly row: Published;
  /** Where a published formula is tried: the point at which it is. Otherwise the row's own inputs hold. */
  readonly at?: string;
  /** True where `theirs` comes from a published formula. */
  readonly form?: true;
  readonly theirs: readonly number[];
  readonly ours: readonly number[];
  /** How far each of our values may be from theirs. */
  readonly allowed: readonly number[];
  readonly unit: string;
  readonly verdict: Verdict;
}

/**
 * The topic that computes a row; undefined where the row needs an aircraft (`limits.ts`, `trade.ts`) or nothing
 * computes it.
 */
function topicOf(row: Published): Topic | undefined {
  return topics.find(
    ({ rowTopics, quantities, forms }) =>
      rowTopics.includes(row.topic) && (row.quantity in quantities || row.id in (forms ?? {})),
  );
}

/** Every published row that needs no aircraft, computed by the core; a published formula gives a result at each point. */
export function runChecks(): CheckResult[] {
  const results = published.flatMap((row) => {
    const topic = topicOf(row);
    return topic ? resultsOf(row, topic) : [];
  });
  const place = (result: CheckResult) => topics.findIndex(({ heading }) => heading === result.heading);
  return results.sort((a, b) => place(a) - place(b));
}

function resultsOf(row: Published, { heading, quantities, forms }: Topic): CheckResult[] {
  const form = forms?.[row.id];
  if (form) {
    return form(row).map(({ inputs, theirs, ours, allowed, unit }) => ({
      heading,
      row,
      at: inputs,
      form: true as const,
      theirs: [theirs],
      ours: [ours],
      allowed: [allowed],
      unit,
      verdict: Math.abs(ours - theirs) <= allowed ? ('agrees' as const) : ('disagrees' as const),
    }));
  }
  return [compared(heading, row, [quantities[row.quantity]!(row)].flat())];
}

/** A row beside our values, and whether they agree. */
export function compared(heading: string, row: Published, ours: readonly number[]): CheckResult {
  const theirs = numbersOf(row);
  const allowed = theirs.map((value) => allowance(row, value));
  const near = ours.length === theirs.length && ours.every((v, i) => Math.abs(v - theirs[i]!) <= allowed[i]!);
  const verdict = row.printedWrong ? ofWrongPrint(row, ours[0]!) : near ? 'agrees' : 'disagrees';
  return { heading, row, theirs, ours, allowed, unit: row.unit, verdict };
}

/** Where the printed figure is wrong, we must agree with the document's own formula and not with the print. */
function ofWrongPrint(row: Published, ours: number): Verdict {
  const { exact } = row;
  if (exact === undefined) throw new Error(`${row.id} is printed wrong, and does not say what is exact`);
  const asTheFormula = Math.abs(ours - exact) / exact < 0.002;
  const asThePrint = Math.abs(ours - numbersOf(row)[0]!) / ours <= 0.0015;
  return asTheFormula && !asThePrint ? 'printed-wrong' : 'disagrees';
}
