import type { Caution, CautionCode, KeyPosition } from '../flight/plan.ts';
import { metresPerFoot } from '../units/factors.ts';
import { formatHeight, heightStep } from '../units/format.ts';
import type { PageUnits } from '../units/page-units.ts';
import { tellingApart } from '../units/telling-apart.ts';

/** Cautions of which a key's own height is the value. */
const ofHeight: ReadonlySet<CautionCode> = new Set(['final-turn-low', 'downwind-key-height']);

/**
 * The height of a key position, as every table, drawing and sentence prints it. Where a caution of the flight holds it
 * against a limit, it has the digit that shows on which side it lies, as the caution has: never `300 ft` for 299 where 300 ft
 * are the least.
 */
export function formatKeyHeight(
  { id, height }: Pick<KeyPosition, 'id' | 'height'>,
  cautions: readonly Pick<Caution, 'code' | 'at' | 'value' | 'limit'>[],
  units: PageUnits,
): string {
  const held = cautions.find(
    ({ code, at, value }) => ofHeight.has(code) && at === id && Math.abs(value - height) < 1e-6,
  );
  if (!held) return formatHeight(height, units);
  const kind = held.value < held.limit ? 'least' : 'most';
  const step = heightStep(units) / (units.height === 'ft' ? metresPerFoot : 1);
  return tellingApart(height, held.limit, units.height, kind, { step }).value;
}
