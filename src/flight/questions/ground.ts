import { metresPerFoot } from '../../units/factors.ts';
import { landingRunOf } from '../aircraft/landing-run.ts';
import type { Plan, TrackSample } from '../terms/plan.ts';

/** m. Landing distances are counted from here: the screen height of 14 CFR 25.125, and of aircraft handbooks. */
export const screenHeight = 50 * metresPerFoot;

/** The ground that a landing takes, m. */
export interface GroundFigures {
  /** From the point of the path 50 ft above the spot to the touchdown; undefined where the path starts lower. */
  readonly fromScreen: number | undefined;
  /** The landing roll in the wind and air of the plan, at its mass: `landing-run.ts`. */
  readonly roll: number;
  /** `fromScreen` and the landing roll. */
  readonly overScreen: number | undefined;
  /** Runway left beyond the touchdown, and how much of it is left after the landing roll. */
  readonly leftAtTouchdown: number;
  readonly leftAtStop: number;
}

/** The ground that a flown plan takes, on the surface that the aircraft's own figure was measured on. */
export function groundFigures(plan: Plan): GroundFigures {
  const { track, touchdown, runway } = plan;
  const roll = landingRunOf(plan);
  const at = screenPoint(track);
  const fromScreen = at === undefined ? undefined : touchdown.along - at;
  const leftAtTouchdown = runway.length - runway.spot - touchdown.along;
  return {
    fromScreen,
    roll,
    overScreen: fromScreen === undefined ? undefined : fromScreen + roll,
    leftAtTouchdown,
    leftAtStop: leftAtTouchdown - roll,
  };
}

/** m along, where the path comes down through the screen height. */
function screenPoint(track: readonly TrackSample[]): number | undefined {
  const i = track.findIndex(({ height }) => height < screenHeight);
  const [above, below] = [track[i - 1], track[i]];
  if (!above || !below) return undefined;
  const share = (above.height - screenHeight) / (above.height - below.height);
  return above.along + share * (below.along - above.along);
}
