import type { KeyId } from '../../flight/terms/key.ts';
import type { Gate, Plan } from '../../flight/terms/plan.ts';
import { formatDistance, formatTime } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { type BandEdge, edgeText, gateBand, noBandText } from '../gates/gate-band.ts';
import { formatKeyHeight } from '../keys/key-height.ts';
import { keyNames } from '../keys/key-names.ts';

/** A key position that is flown through. */
export interface KeyRow {
  readonly id: KeyId;
  readonly label: string;
  readonly height: string;
  /** The heights from which the spot is still made, rounded to the safe side; undefined at a key without a gate. */
  readonly band: Band | undefined;
  /** From the first key, as `::keys` counts it. */
  readonly time: string;
}

/** `none` where no height there is sound. */
export type Band = { readonly none: string } | { readonly low: string; readonly high: string };

/** In the order they are flown; the aim point and the touchdown have no height to keep to. */
export function keyRows({ keys, gates, track, cautions }: Plan, units: PageUnits): KeyRow[] {
  const begin = track[0]?.time ?? 0;
  return keys
    .filter(({ id }) => id !== 'aim-point' && id !== 'touchdown')
    .map(({ id, height, time }) => ({
      id,
      label: keyNames[id],
      height: formatKeyHeight({ id, height }, cautions, units),
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
  if (band.none !== undefined) return { none: noBandText };
  // Where no height is an edge, nothing but the plan itself was found to be sound.
  const text = (edge: BandEdge) => (typeof edge === 'number' ? edgeText(edge, units) : 'the plan');
  return { low: text(band.low), high: text(band.high) };
}

/** Where the base turn begins, with the aircraft flying away from the spot: `550 m past abeam`; undefined without one. */
export function baseTurnPlace({ keys }: Plan, units: PageUnits): string | undefined {
  const turn = keys.find(({ id }) => id === 'base-turn');
  if (turn === undefined) return undefined;
  const far = formatDistance(Math.abs(turn.along), units);
  if (far === formatDistance(0, units)) return 'abeam';
  return `${far} ${turn.along < 0 ? 'past' : 'before'} abeam`;
}
