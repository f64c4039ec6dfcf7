import type { CalibrationRow } from '../terms/aircraft.ts';
import { RequestError } from '../terms/errors.ts';

/** The table of an aircraft that gives none: indicated is equivalent. */
export const noCalibration: readonly CalibrationRow[] = [];

/**
 * The equivalent airspeed for an indicated one, m/s: linear between the rows, with the difference in the end rows
 * kept beyond them.
 */
export function toEquivalent(indicated: number, table: readonly CalibrationRow[]): number {
  return along(indicated, table, 'indicated', 'equivalent');
}

/** The indicated airspeed for an equivalent one, m/s. */
export function toIndicated(equivalent: number, table: readonly CalibrationRow[]): number {
  return along(equivalent, table, 'equivalent', 'indicated');
}

/** What an aircraft's indicator shows at an equivalent airspeed, m/s. */
export function indicatedSpeed(
  equivalent: number,
  aircraft: { readonly calibration?: readonly CalibrationRow[] | undefined },
): number {
  return toIndicated(equivalent, aircraft.calibration ?? noCalibration);
}

/** Throws RequestError unless both columns rise from row to row. */
export function checkCalibration(table: readonly CalibrationRow[]): void {
  table.forEach((row, i) => {
    const below = table[i - 1];
    const rises = !below || (row.indicated > below.indicated && row.equivalent > below.equivalent);
    if (!(rises && row.indicated > 0 && row.equivalent > 0)) {
      throw new RequestError('aircraft.calibration', { code: 'calibration-not-rising' });
    }
  });
}

type Column = keyof CalibrationRow;

function along(value: number, table: readonly CalibrationRow[], from: Column, to: Column): number {
  const [first] = table;
  const last = table.at(-1);
  if (!first || !last) return value;
  if (value <= first[from]) return value + first[to] - first[from];
  if (value >= last[from]) return value + last[to] - last[from];
  const i = table.findIndex((row) => row[from] >= value);
  const [below, above] = [table[i - 1]!, table[i]!];
  const share = (value - below[from]) / (above[from] - below[from]);
  return below[to] + share * (above[to] - below[to]);
}
