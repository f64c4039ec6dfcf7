import { edgeTexts } from '../src/drawing/gate-band.ts';
import type { Gate } from '../src/flight/plan.ts';
import type { PageUnits } from '../src/units/page-units.ts';

export { formatEdge, formatSafeDistance } from '../src/units/safe-rounding.ts';

/** An edge of a gate as `edgeTexts` has it; undefined where the gate has no such edge. */
export function formatGateEdge(gate: Gate, edge: 'low' | 'high', units: PageUnits): string | undefined {
  return gate[edge] === null ? undefined : edgeTexts(gate, units)[edge];
}
