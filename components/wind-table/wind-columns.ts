import type { CautionCode, KeyId } from '../../src/flight/plan.ts';
import type { WindRow } from '../../src/flight/wind-table.ts';
import { formatAngle, formatDistance, formatHeight, formatTime } from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { formatEdge } from '../safe-rounding.ts';

/** A row of the table with what the flight in that wind is to be warned of. */
export interface WatchedRow extends WindRow {
  readonly cautions: readonly CautionCode[];
}

/** One column: its head, and its cell; undefined where the approach has no such figure in that wind. */
export interface Column {
  readonly head: string;
  readonly cell: (row: WatchedRow, units: PageUnits) => string | undefined;
}

const heightAt =
  (id: KeyId): Column['cell'] =>
  ({ keys }, units) => {
    const key = keys.find((each) => each.id === id);
    return key && formatHeight(key.height, units);
  };

const keyHeight: Column = { head: 'Height at downwind key', cell: heightAt('downwind-key') };

const columns: readonly Column[] = [
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
  {
    head: 'Height at final',
    cell: (row, units) => {
      const key = row.keys.find(({ id }) => id === 'final');
      // Rounded to the limit itself, a height that is too low would not look it.
      if (key && row.cautions.includes('final-turn-low')) return formatEdge(key.height, 'high', units);
      return heightAt('final')(row, units);
    },
  },
  { head: 'Steepest bank', cell: ({ steepestBank }) => formatAngle(steepestBank) },
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

/** The columns of which at least one row has a figure; a height that every wind leaves as it is needs no column. */
export function columnsOf(rows: readonly WatchedRow[], units: PageUnits): Column[] {
  const made = rows.filter((row) => row.made);
  return columns.filter((column) => {
    const figures = made.map((row) => column.cell(row, units));
    const given = column === keyHeight && new Set(figures).size === 1 && rows.length > 1;
    return !given && figures.some((figure) => figure !== undefined);
  });
}

/** What a caution is in a table; the wind limits are not among them: no such wind is in it. */
const short: Partial<Record<CautionCode, string>> = {
  'final-turn-low': 'turn to final too low',
  'downwind-key-height': 'unusual key height',
  'bank-over-medium': 'bank over medium',
  'stall-margin': 'small margin over the stall in the turn',
  'obstacle-clearance': 'too near an obstacle',
  'off-runway': 'off the runway',
  'landing-distance': 'runway too short',
  'round-out-pull': 'hard pull in the round-out',
};

export function watchWords(row: WatchedRow): string {
  const words = row.cautions.map((code) => short[code]).filter((each) => each !== undefined);
  return words.length === 0 ? '–' : words.join('; ');
}
