import type { Caution, CautionCode } from '../../flight/terms/caution.ts';
import type { KeyPosition } from '../../flight/terms/plan.ts';
import { withUnit } from '../../units/rounding.ts';
import { heightStep } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { tellingApart } from '../figures/telling-apart.ts';
import { heightUnitSize } from '../figures/unit-size.ts';

/** Cautions whose value is a key's own height. */
const ofHeight: ReadonlySet<CautionCode> = new Set(['final-turn-low', 'downwind-key-height']);

type Held = Pick<Caution, 'code' | 'at' | 'value' | 'limit'>;

/**
 * The height of a key position, as every table, drawing and sentence prints it. Where a caution of the flight
 * compares it with a limit, it has the digit that shows on which side it lies, as the caution has: never `300 ft` for
 * 299 where 300 ft is the least.
 */
export function formatKeyHeight(
  key: Pick<KeyPosition, 'id' | 'height'>,
  cautions: readonly Held[],
  units: PageUnits,
): string {
  return withUnit(key.height / heightUnitSize(units), keyHeightStep(key, cautions, units), units.height);
}

/** The step that the height of a key position is printed to, in the unit of the page. */
export function keyHeightStep(
  { id, height }: Pick<KeyPosition, 'id' | 'height'>,
  cautions: readonly Held[],
  units: PageUnits,
): number {
  const step = heightStep(units) / heightUnitSize(units);
  const held = cautions.find(
    ({ code, at, value }) => ofHeight.has(code) && at === id && Math.abs(value - height) < 1e-6,
  );
  if (!held) return step;
  const kind = held.value < held.limit ? 'least' : 'most';
  return tellingApart({ value: height, limit: held.limit }, units.height, kind, { step }).step;
}
