import { formatAngle } from '../units/angle-text.ts';
import { variationAt } from './variation.ts';
import type { YamlSource } from './yaml-source.ts';

interface Placed {
  readonly elevation: number;
  readonly position?: { readonly latitude: number; readonly longitude: number } | undefined;
  readonly variation?: number | undefined;
}

/** Charts and models differ by less than this, years of drift included; more means a wrong side or a wrong place. */
const allowed = (2 * Math.PI) / 180;

/**
 * The airfield's variation, rad, east positive: the file's own, else that of the World Magnetic Model at its position
 * on the day. It is a warning if the file's own is more than 2 degrees off the model, or if the file has none and the
 * model does not cover the day or the place.
 */
export function variationOf(source: YamlSource, { elevation, position, variation }: Placed, day: Date) {
  if (!position) return variation;
  let modelled: number;
  try {
    modelled = variationAt({ ...position, elevation, date: day });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    if (variation !== undefined) return variation;
    const advice = 'take it from a chart, and write it as `variation: 2 deg W`';
    source.warn(
      `There is no magnetic variation for this position: ${error.message}; ${advice}`,
      'variation',
      ['position'],
    );
    return undefined;
  }
  if (variation === undefined) return modelled;
  const off = Math.abs(Math.atan2(Math.sin(variation - modelled), Math.cos(variation - modelled)));
  if (off > allowed) {
    const side = modelled < 0 ? 'W' : 'E';
    const reason =
      `The magnetic model gives ${formatAngle(Math.abs(modelled))} ${side} at this position: ` +
      'one of `variation` and `position` is wrong';
    source.warn(reason, 'variation', ['variation']);
  }
  return variation;
}
