import { approaches } from '../../flight/approaches/approaches.ts';
import type { Plan, TrackSample } from '../../flight/terms/plan.ts';
import type { DrawnFault } from '../shared/drawn-fault.ts';
import { distanceToGo } from '../shared/track-line.ts';

/** A place on the flight of a fault, m. */
export interface FaultPlace {
  /** Left to fly to the end of the fault, and from there along the runway to the planned touchdown. */
  readonly toGo: number;
  readonly height: number;
}

/**
 * The flight of a fault beside a plan. Its end is as far from the planned touchdown as it really is along the runway:
 * where it ends short, that much is still to go; where it ends past it, that much less than nothing. For a spiral,
 * only what follows the circles.
 */
export function faultPlaces(plan: Plan, fault: DrawnFault): FaultPlace[] {
  const shown = shownTrack(plan, fault);
  const end = fault.track.at(-1)!;
  const missing = plan.touchdown.along - end.along;
  return distanceToGo(shown).map((metres, index) => ({
    toGo: metres + missing,
    height: shown[index]!.height,
  }));
}

/** False where the flight of a fault never leaves the circles, which the profile of a spiral does not show. */
export function isInProfile(plan: Plan, fault: DrawnFault): boolean {
  return shownTrack(plan, fault).length > 1;
}

function shownTrack({ approach }: Plan, { track }: DrawnFault): readonly TrackSample[] {
  return approaches[approach].endsIn !== undefined
    ? track.slice(track.findLastIndex(({ phase }) => phase === 'circle') + 1)
    : track;
}
