import type { Caution } from '../../flight/terms/caution.ts';
import type { Gate } from '../../flight/terms/plan.ts';
import { roundDownTo, roundTo, withUnit } from '../../units/rounding.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { heightUnitSize } from '../figures/unit-size.ts';
import { keyHeightStep } from '../keys/key-height.ts';
import { gateBand } from './gate-band.ts';

/** How far a plan stands above the lowest height of its band; negative below it. */
export interface InHand {
  /** m. */
  readonly height: number;
  /** Its size, without a sign. */
  readonly text: string;
}

/**
 * What a plan has in hand below it, as a reader would find it by taking the printed edge from the printed plan, and never
 * more than there is. Undefined where there is no edge to take.
 */
export function inHandBelow(
  gate: Gate,
  cautions: readonly Pick<Caution, 'code' | 'at' | 'value' | 'limit'>[],
  units: PageUnits,
): InHand | undefined {
  const band = gateBand(gate, units);
  if (band.none !== undefined || typeof band.low !== 'number') return undefined;
  const size = heightUnitSize(units);
  const step = keyHeightStep({ id: gate.at, height: gate.plan }, cautions, units);
  const printed = roundTo(roundTo(gate.plan / size, step) - band.low / size, step);
  const inHand = Math.min(printed, roundDownTo((gate.plan - (gate.low ?? band.low)) / size, step));
  return { height: inHand * size, text: withUnit(Math.abs(inHand), step, units.height) };
}
