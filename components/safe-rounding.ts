import type { Gate } from '../src/flight/plan.ts';
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

/** m: nearer to an edge than a page can print is at the edge. */
export const asNear = 5 * metresPerFoot;

/**
 * An edge of a gate beside its plan. Where the plan lies at the edge, the rounded figures would put it outside its own
 * band: the edge is then `the plan`. Undefined where the gate has no such edge.
 */
export function formatGateEdge(gate: Gate, edge: 'low' | 'high', units: PageUnits): string | undefined {
  const value = gate[edge];
  if (value === null) return undefined;
  return isPlanEdge(gate, edge, units) ? 'the plan' : formatEdge(value, edge, units);
}

/** Whether the plan is at the edge, and rounded with it would be printed beyond it. */
export function isPlanEdge(gate: Gate, edge: 'low' | 'high', units: PageUnits): boolean {
  const value = gate[edge];
  if (value === null) return false;
  const step = heightStep(units);
  const planned = step * Math.round(gate.plan / step);
  return edge === 'low'
    ? gate.plan >= value - asNear && planned < towards('up', value, step) - step / 2
    : gate.plan <= value + asNear && planned > towards('down', value, step) + step / 2;
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
