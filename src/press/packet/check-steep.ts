import type { VFile } from 'vfile';
import { sinOfGlide } from '../../flight/aircraft/glide.ts';
import { resolveAircraft } from '../../flight/aircraft/resolve-aircraft.ts';
import { classTerms } from '../../flight/terms/aircraft-class.ts';
import { RequestError } from '../../flight/terms/errors.ts';
import type { AircraftFile } from '../../school/aircraft.ts';
import { YamlSource } from '../../school/yaml-source.ts';
import { formatRatio } from '../../words/figures/format.ts';

/** A share of the ratio: two measurements of one glide may differ by this much (a figure of ours, no source). */
const mayDiffer = 0.1;

/**
 * Warns of a weight-shift aircraft whose steep approach is off its own glide polar: without flap, brake or slip it
 * has one polar, and two that contradict each other make the upper edge of every gate too high or too low.
 */
export function checkSteep(file: VFile, aircraft: AircraftFile): void {
  const onPolar = ratioOnPolar(aircraft);
  const { steepApproach } = aircraft;
  if (onPolar === undefined || !steepApproach) return;
  const { ratio } = steepApproach;
  if (Math.abs(ratio - onPolar) <= mayDiffer * onPolar) return;
  const reason =
    `\`steep-approach\`: at this speed the glide of \`idle\` gives ${formatRatio(onPolar)}, and ${formatRatio(ratio)} stands here. ` +
    'A wing without flap, brake or slip has one polar: measure again, or give `idle` as `points`';
  YamlSource.open(file)?.warn(reason, 'steep-approach', ['steep-approach', 'ratio']);
}

/** The ratio of the idling glide at the speed of the steep approach; undefined where that is a different glide. */
function ratioOnPolar(aircraft: AircraftFile): number | undefined {
  if (!classTerms[aircraft.class].hasOnePolar) return undefined;
  try {
    const { glide, steepApproach } = resolveAircraft(aircraft);
    if (!steepApproach) return undefined;
    const sine = sinOfGlide(glide.idle, steepApproach.speed, 1);
    return sine >= 1 ? undefined : Math.sqrt(1 - sine ** 2) / sine;
  } catch (error) {
    // What is wrong with the aircraft itself is said where it is flown.
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}
