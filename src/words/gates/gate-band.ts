import type { Gate } from '../../flight/terms/plan.ts';
import { metresPerFoot } from '../../units/factors.ts';
import { formatHeight } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { roundEdge } from '../figures/safe-rounding.ts';

/**
 * An edge of a band as it is printed: a height (m, a whole step of the page, the low one rounded up and the high one
 * down);
 * `plan` where the plan is so near to the edge that rounding would leave it outside its own band; `open` where no
 * height was found to be an edge.
 */
export type BandEdge = number | 'plan' | 'open';

/**
 * Why a gate has no band: no path that it allows comes to the spot, from any height; its edges cross, so that what is
 * high enough is too high; or they are so near together that they cross when each is rounded to its safe side.
 */
export type NoBand = 'no-path' | 'crossed' | 'too-narrow';

export type GateBand =
  | { readonly low: BandEdge; readonly high: BandEdge; readonly none?: undefined }
  | { readonly none: NoBand };

/** What is printed in place of the edges. */
export const noBandText = 'no band';

/** Why, in few words. */
export const noBandWhy: Readonly<Record<NoBand, string>> = {
  'no-path': 'no way from there comes to the spot',
  crossed: 'its edges cross',
  'too-narrow': 'its edges meet',
};

/** m: a plan nearer to an edge than a page can print is at the edge. */
export const asNear = 5 * metresPerFoot;

/** The heights at a key from which the spot is still made, as every table, drawing, card and question prints them. */
export function gateBand({ low, plan, high }: Gate, units: PageUnits): GateBand {
  if (low === null && high === null) return { none: 'no-path' };
  if (low === null) return { low: 'open', high: edge('high', high!, plan, units) };
  if (high === null) return { low: edge('low', low, plan, units), high: 'open' };
  if (low > high + asNear) return { none: 'crossed' };
  if (roundEdge(low, 'low', units) > roundEdge(high, 'high', units)) return { none: 'too-narrow' };
  return { low: edge('low', low, plan, units), high: edge('high', high, plan, units) };
}

/** `740 ft`, `the plan`, `–`. */
export function edgeText(band: BandEdge, units: PageUnits): string {
  if (band === 'plan') return 'the plan';
  return band === 'open' ? '–' : formatHeight(band, units);
}

/** Both edges as they are printed; `no band` for each where there is none. */
export function edgeTexts(gate: Gate, units: PageUnits): { readonly low: string; readonly high: string } {
  const band = gateBand(gate, units);
  if (band.none !== undefined) return { low: noBandText, high: noBandText };
  return { low: edgeText(band.low, units), high: edgeText(band.high, units) };
}

/** m. */
const aHair = 1e-6;

function edge(which: 'low' | 'high', value: number, plan: number, units: PageUnits): BandEdge {
  const printed = roundEdge(value, which, units);
  // For a plan exactly on a step, what floating point leaves over does not count.
  const beyond = which === 'low' ? plan < printed - aHair : plan > printed + aHair;
  const isInBand = which === 'low' ? plan >= value - asNear : plan <= value + asNear;
  return beyond && isInBand ? 'plan' : printed;
}
