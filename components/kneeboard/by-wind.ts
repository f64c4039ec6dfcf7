import {
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  metresPerSecondPerMph,
} from '../../src/units/factors.ts';
import { formatHeight, formatSpeed, formatTime } from '../../src/units/format.ts';
import type { PacketContext } from '../context.ts';
import type { WatchedRow } from '../wind-table/wind-columns.ts';
import { watchedRows } from '../wind-table/wind-table.ts';
import { windsWithin } from '../wind-table/winds.ts';

/** Stands for a figure that is not to be flown. */
export const notSound = 'not sound';

export interface ByWind {
  readonly head: string;
  readonly rows: readonly { readonly wind: string; readonly figure: string }[];
}

/** Round figures in the units of the page, m/s. */
const steps = {
  kt: [0, 5, 10, 15].map((kt) => kt * metresPerSecondPerKnot),
  'km/h': [0, 10, 20, 30].map((kmh) => kmh * metresPerSecondPerKmh),
  mph: [0, 5, 10, 15].map((mph) => mph * metresPerSecondPerMph),
};

/**
 * What the wind along the runway changes most, for a card: when the base turn starts, or, for an approach that begins on
 * base, at what height. Winds over the aircraft's limits are left out; one in which the approach is not sound says so.
 */
export function byWind({ plan, request, units }: PacketContext): ByWind {
  const { winds } = windsWithin(steps[units.speed], [0], plan.aircraft);
  const rows = watchedRows(request, winds);
  const onBase = plan.approach === '90';
  return {
    head: onBase ? 'Throttle closed on base, by headwind' : 'Base turn after the key, by headwind',
    rows: rows.map((row) => ({
      wind: row.headwind === 0 ? 'no wind' : formatSpeed(row.headwind, units),
      figure: (onBase ? throttleHeight(row) : turnTime(row)) ?? notSound,
    })),
  };

  function turnTime(row: WatchedRow): string | undefined {
    return sound(row) && row.seconds !== undefined ? formatTime(row.seconds) : undefined;
  }
  function throttleHeight(row: WatchedRow): string | undefined {
    const key = row.keys.find(({ id }) => id === 'base-key');
    return sound(row) && key ? formatHeight(key.height, units) : undefined;
  }
}

/** A card has no room for a warning: what needs one is not printed as a figure. */
export function sound(row: WatchedRow): boolean {
  return row.made && row.cautions.every((code) => code === 'downwind-key-height');
}
