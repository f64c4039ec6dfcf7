import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Aircraft } from '../../src/flight/terms/aircraft.ts';
import type { KeyId } from '../../src/flight/terms/key.ts';
import { formatAngle } from '../../src/units/angle-text.ts';
import { gradeNames, markWords } from '../../src/words/cautions/grade-words.ts';
import { formatDistance, formatTime } from '../../src/words/figures/format.ts';
import { capital } from '../../src/words/figures/letter-case.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatKeyHeight } from '../../src/words/keys/key-height.ts';
import { cautionWords, rowAgainst, startWords } from '../../src/words/winds/start-words.ts';
import { isFlyable, type WatchedRow } from '../../src/words/winds/watched-rows.ts';
import { crosswindWords } from '../../src/words/winds/wind-words.ts';

/** One column: its head and its cell; undefined where the approach has no such figure in that wind. */
export interface Column {
  readonly head: string;
  readonly cell: (row: WatchedRow, units: PageUnits) => string | undefined;
}

const heightAt =
  (id: KeyId): Column['cell'] =>
  ({ keys, cautions }, units) => {
    const key = keys.find((each) => each.id === id);
    return key && formatKeyHeight(key, cautions, units);
  };

const keyHeight: Column = { head: 'Height at downwind key', cell: heightAt('downwind-key') };

const steepestBank: Column = {
  head: 'Steepest bank',
  cell: ({ steepestBank }) => formatAngle(steepestBank),
};

/** The part of a turning wind at the key that the pilot lays off for; only in a table whose wind turns. */
const acrossAtKey: Column = {
  head: 'Across, at the key',
  cell: ({ acrossAtKey }, units) =>
    acrossAtKey === undefined ? undefined : crosswindWords(acrossAtKey, units),
};

const columns: readonly Column[] = [
  {
    head: 'Base key: so far out',
    // For the 90, which begins there: as far before the spot as to its side.
    cell: ({ keys }, units) => {
      const [first] = keys;
      return first?.id === 'base-key' ? formatDistance(Math.abs(first.across), units) : undefined;
    },
  },
  {
    head: 'Base turn starts',
    cell: ({ pastAbeam }, units) => {
      if (pastAbeam === undefined) return undefined;
      const far = formatDistance(Math.abs(pastAbeam), units);
      if (far === formatDistance(0, units)) return 'abeam';
      return `${far} ${pastAbeam < 0 ? 'before' : 'past'} abeam`;
    },
  },
  {
    head: 'After the key',
    cell: ({ seconds }) => (seconds === undefined ? undefined : formatTime(seconds)),
  },
  keyHeight,
  { head: 'Height at base key', cell: heightAt('base-key') },
  { head: 'Height at final', cell: heightAt('final') },
  steepestBank,
  {
    head: 'Crab on base',
    cell: ({ crabOnBase }) => {
      if (crabOnBase === undefined) return undefined;
      const size = formatAngle(Math.abs(crabOnBase));
      if (size === formatAngle(0)) return 'none';
      return `${size} to the ${crabOnBase < 0 ? 'left' : 'right'}`;
    },
  },
];

/**
 * The columns for which at least one row has a figure. A height that stays the same in every wind needs no column,
 * nor, where the wind turns and has columns of its own, does a bank that is always the same.
 */
export function columnsOf(rows: readonly WatchedRow[], units: PageUnits, isTurning: boolean): Column[] {
  const flyable = rows.filter(isFlyable);
  const all = isTurning ? [acrossAtKey, ...columns] : columns;
  const unchanged = isTurning ? [keyHeight, steepestBank] : [keyHeight];
  return all.filter((column) => {
    const figures = flyable.map((row) => column.cell(row, units));
    const given = unchanged.includes(column) && new Set(figures).size === 1 && rows.length > 1;
    return !given && figures.some((figure) => figure !== undefined);
  });
}

/**
 * What is printed under the figures of a wind: limits that are passed, and from which height none is; what is worth
 * knowing.
 */
export function bewareOf(
  row: WatchedRow,
  aircraft: Aircraft,
  units: PageUnits,
): (string | Element)[] | undefined {
  const known = row.cautions.filter(({ grade }) => grade === 'worth-knowing');
  const knowing = known.length === 0 ? [] : [cautionWords(known, aircraft, units)];
  if (row.start === undefined) {
    return knowing.length === 0
      ? undefined
      : [`${capital(gradeNames['worth-knowing'])}: ${knowing.join('')}`];
  }
  const against = rowAgainst(row, aircraft, units);
  const words = [against, ...knowing, startWords(row.start, aircraft, units, against)];
  return [mark('beyond-good-practice'), `: ${words.join('; ')}`];
}

/** What is printed in place of the figures of a wind in which the approach is not made, or not to be flown. */
export function refusalOf(row: WatchedRow, aircraft: Aircraft, units: PageUnits): (string | Element)[] {
  const against = rowAgainst(row, aircraft, units);
  const why = row.made
    ? against
    : ['the spot is not made in this wind', ...(against === '' ? [] : [against])].join(': ');
  const start = row.start && startWords(row.start, aircraft, units, against);
  return [mark('not-to-be-flown'), `: ${[why, ...(start === undefined ? [] : [start])].join('; ')}`];
}

function mark(grade: keyof typeof markWords): Element {
  return h('span', { className: ['grade-mark', grade] }, markWords[grade]);
}
