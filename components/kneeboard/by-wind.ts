import type { KeyPosition } from '../../src/flight/plan.ts';
import {
  metresPerSecondPerKmh,
  metresPerSecondPerKnot,
  metresPerSecondPerMph,
} from '../../src/units/factors.ts';
import { formatDistance, formatHeight, formatSpeed, formatTime } from '../../src/units/format.ts';
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
 * base, how far out at the given height, or how high at the given distance. Winds over the aircraft's limits are left
 * out; one in which the approach is not sound says so.
 */
export function byWind({ plan, request, units }: PacketContext): ByWind {
  const { winds } = windsWithin(steps[units.speed], [0], plan.aircraft);
  const rows = watchedRows(request, winds);
  const { head, figure } =
    plan.approach === '90' ? onBase() : { head: 'Base turn after the key', figure: turnTime };
  return {
    head: `${head}, by headwind`,
    rows: rows.map((row) => ({
      wind: row.headwind === 0 ? 'no wind' : formatSpeed(row.headwind, units),
      figure: figure(row) ?? notSound,
    })),
  };

  /** The base key lies as far before the spot as to its side. */
  function onBase(): { head: string; figure: (row: WatchedRow) => string | undefined } {
    const distance = (key: KeyPosition) => formatDistance(Math.abs(key.across), units);
    const height = (key: KeyPosition) => formatHeight(key.height, units);
    const of = (figure: (key: KeyPosition) => string) => (row: WatchedRow) => {
      const key = row.keys.find(({ id }) => id === 'base-key');
      return sound(row) && key ? figure(key) : undefined;
    };
    const planned = plan.keys.find(({ id }) => id === 'base-key');
    const at = (figure: (key: KeyPosition) => string) => (planned ? ` ${figure(planned)}` : '');
    return request.height === undefined
      ? {
          head: `Throttle closed on base,${at(distance)} before the spot and to its side`,
          figure: of(height),
        }
      : {
          head: `Throttle closed at${at(height)}, so far before the spot and to its side`,
          figure: of(distance),
        };
  }
  function turnTime(row: WatchedRow): string | undefined {
    return sound(row) && row.seconds !== undefined ? formatTime(row.seconds) : undefined;
  }
}

/** A card has no room for a warning: what needs one is not printed as a figure. */
export function sound(row: WatchedRow): boolean {
  return row.made && row.cautions.every((code) => code === 'downwind-key-height');
}
