import { notSound, sound } from '../../../components/kneeboard/by-wind.ts';
import { watchedRows } from '../../../components/wind-table/wind-table.ts';
import { windsWithin } from '../../../components/wind-table/winds.ts';
import type { Aircraft } from '../../flight/aircraft.ts';
import type { PlanRequest } from '../../flight/plan.ts';
import { metresPerSecondPerKmh, metresPerSecondPerKnot, metresPerSecondPerMph } from '../../units/factors.ts';
import { formatHeight, formatSpeed, formatTime } from '../../units/format.ts';
import type { PageUnits } from '../../units/page-units.ts';

/** The approach in one headwind: when the base turn starts, and the height at the base key. */
export interface WindColumn {
  readonly headwind: string;
  /** s after the downwind key; undefined for an approach that begins on base. */
  readonly baseTurn: string | undefined;
  readonly baseKey: string;
}

/** m/s: round figures in the units of the page. */
const steps = {
  kt: 5 * metresPerSecondPerKnot,
  'km/h': 10 * metresPerSecondPerKmh,
  mph: 5 * metresPerSecondPerMph,
};

/** More columns than this are not read at arm's length. */
const most = 7;

/**
 * From no wind to the aircraft's limit, each flown on its own. A wind in which the approach needs a warning has no
 * figure: `::kneeboard` has none there either.
 */
export function windColumns(request: PlanRequest, aircraft: Aircraft, units: PageUnits): WindColumn[] {
  const { winds } = windsWithin(headwinds(aircraft.limits.wind, steps[units.speed]), [0], aircraft);
  return watchedRows(request, winds).map((row) => {
    const isSound = sound(row);
    const key = row.keys.find(({ id }) => id === 'base-key');
    return {
      headwind: formatSpeed(row.headwind, units),
      baseTurn:
        request.approach === '90'
          ? undefined
          : isSound && row.seconds !== undefined
            ? formatTime(row.seconds)
            : notSound,
      baseKey: isSound && key ? formatHeight(key.height, units) : notSound,
    };
  });
}

/** The step doubles until the columns are few enough. */
function headwinds(limit: number, step: number): number[] {
  const count = Math.floor(limit / step + 1e-9) + 1;
  return count > most ? headwinds(limit, 2 * step) : Array.from({ length: count }, (_, i) => i * step);
}
