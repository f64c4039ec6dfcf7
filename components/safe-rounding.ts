import { metresPerFoot } from '../src/units/factors.ts';
import { formatDistance, formatHeight } from '../src/units/format.ts';
import type { PageUnits } from '../src/units/page-units.ts';

// A figure that must not be missed is not printed to the nearest step of the page but to the next one on its safe
// side: what is needed is rounded up, what there is to spend or to stay below, down.

type Way = 'up' | 'down';

/** m: the steps of `formatHeight` and `formatDistance`. */
const heightStep = (units: PageUnits) => (units.height === 'ft' ? 10 * metresPerFoot : 5);
const distanceStep = (units: PageUnits) => (units.distance === 'ft' ? 50 * metresPerFoot : 10);

/** The low edge of a band of heights (m) is rounded up, the high edge down. Throws RangeError where it is not finite. */
export function formatEdge(metres: number, edge: 'low' | 'high', units: PageUnits): string {
  return formatHeight(towards(edge === 'low' ? 'up' : 'down', metres, heightStep(units)), units);
}

/** A distance, m: one that is needed `up`, one that is left `down`. Throws RangeError where it is not finite. */
export function formatSafeDistance(metres: number, way: Way, units: PageUnits): string {
  return formatDistance(towards(way, metres, distanceStep(units)), units);
}

/** A whole step that floating point left a hair off is still that step. */
function towards(way: Way, value: number, step: number): number {
  const steps = value / step;
  return step * (way === 'up' ? Math.ceil(steps - 1e-6) : Math.floor(steps + 1e-6));
}
