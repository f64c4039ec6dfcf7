import { type BandEdge, edgeText, gateBand } from '../../drawing/gate-band.ts';
import type { Gate, KeyId, Plan } from '../../flight/plan.ts';
import { formatHeight, formatTime } from '../../units/format.ts';
import type { PageUnits } from '../../units/page-units.ts';

/** A key position that is flown through. */
export interface KeyRow {
  readonly id: KeyId;
  readonly label: string;
  readonly height: string;
  /** From where the spot is still made, rounded on the safe side; undefined at a key without a gate. */
  readonly band: Band | undefined;
  /** From the first key, as `::keys` counts it. */
  readonly time: string;
}

/** `none`: no height there is sound. */
export type Band = 'none' | { readonly low: string; readonly high: string };

/** In the order they are flown; the aim point and the touchdown have no height to hold. */
export function keyRows({ keys, gates, track }: Plan, units: PageUnits): KeyRow[] {
  const begin = track[0]?.time ?? 0;
  return keys
    .filter(({ id }) => id !== 'aim-point' && id !== 'touchdown')
    .map(({ id, label, height, time }) => ({
      id,
      label,
      height: formatHeight(height, units),
      band: bandOf(
        gates.find(({ at }) => at === id),
        units,
      ),
      time: formatTime(time - begin),
    }));
}

function bandOf(gate: Gate | undefined, units: PageUnits): Band | undefined {
  if (!gate) return undefined;
  const band = gateBand(gate, units);
  if (band.none !== undefined) return 'none';
  // Where no height is an edge, nothing beyond the plan itself was found to be sound.
  const text = (edge: BandEdge) => (edge === 'open' ? 'the plan' : edgeText(edge, units));
  return { low: text(band.low), high: text(band.high) };
}
