import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { ALONG } from '../flying/motions.ts';
import type { Leg } from '../flying/procedure.ts';
import { seekRoot } from '../numerics/root.ts';
import type { TrackSample } from '../terms/plan.ts';

/** m: how much higher than planned a final may begin. */
const highest = 600;

/**
 * How much higher (m; lower where negative) final begins, flown as `legs` say and no longer as planned, so that it ends
 * where the planned one ends: another speed needs another height for the same place. Undefined where none does it.
 */
export function heightForPlace(
  legs: readonly Leg[],
  start: Pick<TrackSample, 'along' | 'height' | 'eas'>,
  end: Pick<TrackSample, 'along' | 'height'>,
  conditions: Conditions,
): number | undefined {
  const [first] = legs;
  if (!first) return undefined;
  const miss = (by: number): number => {
    const flight = new Flight(conditions, 0, 'search');
    flight.begin({ along: start.along, across: 0, eas: start.eas, height: start.height + by }, first);
    for (const leg of legs) flight.leg(leg);
    return flight.flyable ? flight.state[ALONG]! - end.along : Number.NaN;
  };
  const lowest = end.height - start.height + 1;
  const likely = { guess: 0, slope: conditions.polar.ratio, within: [lowest, highest] } as const;
  const sought = seekRoot(miss, likely, 0.01);
  return sought?.found ? sought.x : undefined;
}
