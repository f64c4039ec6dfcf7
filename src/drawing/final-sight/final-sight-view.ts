import type { GroundPoint } from '../../flight/flying/reach.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { metresPerFoot } from '../../units/factors.ts';

/** Where the eye is on final: m in the spot frame, on the centreline. */
export interface Eye {
  readonly along: number;
  readonly height: number;
}

/** Above, on and under the plan's path, at the same distance. */
export type SightId = 'low' | 'right' | 'high';

export interface Sight {
  readonly id: SightId;
  readonly eye: Eye;
  /** rad: the aim point below the horizon. */
  readonly depression: number;
  /**
   * m along from the aim point to where a glide ends that goes on from here at the plan's angle: negative where it is
   * short.
   */
  readonly miss: number;
}

/** How far, as a share, the low and the high view are under and over the plan's path. */
const offPath = 0.3;

/** m: the views are taken at this height where final passes through it. */
export const sightHeight = 300 * metresPerFoot;

/** Where the views are taken: at `sightHeight`, or half-way along a final that begins below it. */
export function eyeOnFinal(plan: Plan): Eye | undefined {
  const final = plan.track.filter(({ phase }) => phase === 'final');
  const [first] = final;
  const last = final.at(-1);
  if (!first || !last || first === last) return undefined;
  const passes = first.height >= sightHeight && last.height < sightHeight;
  const halfWay = (first.along + last.along) / 2;
  const after = final.findIndex(({ height, along }) => (passes ? height < sightHeight : along >= halfWay));
  if (after < 1) return undefined;
  const [a, b] = [final[after - 1]!, final[after]!];
  const share = passes
    ? (a.height - sightHeight) / (a.height - b.height)
    : (halfWay - a.along) / (b.along - a.along);
  return {
    along: a.along + share * (b.along - a.along),
    height: a.height + share * (b.height - a.height),
  };
}

/** m along from the spot. */
export function aimAlong(plan: Plan): number | undefined {
  return plan.keys.find(({ id }) => id === 'aim-point')?.along;
}

/** The three views; undefined where the plan has no final leg with an aim point ahead. */
export function sightsOf(plan: Plan): readonly Sight[] | undefined {
  const eye = eyeOnFinal(plan);
  const aim = aimAlong(plan);
  if (!eye || aim === undefined || aim - eye.along < 20) return undefined;
  const distance = aim - eye.along;
  const at = (id: SightId, share: number): Sight => {
    const height = eye.height * share;
    return {
      id,
      eye: { along: eye.along, height },
      depression: Math.atan(height / distance),
      miss: (share - 1) * distance,
    };
  };
  return [at('low', 1 - offPath), at('right', 1), at('high', 1 + offPath)];
}

/** A place in the picture, as tangents: to the right of the middle, and below the horizon. */
export interface Seen {
  readonly right: number;
  readonly below: number;
}

/**
 * The pinhole projection on a picture that stands upright, the eye looking level along the runway: right = across/d,
 * below = height/d, d the distance ahead along the ground. Multiplied by the distance from which the picture is
 * looked at, these are its measures. The horizon is at eye level: the ground is taken as flat.
 */
export function seen({ along, across }: GroundPoint, eye: Eye): Seen {
  const ahead = along - eye.along;
  return { right: across / ahead, below: eye.height / ahead };
}

/** The part of the runway that is drawn: m along from the spot, and whether its near end is in the picture. */
export interface SeenRunway {
  readonly near: number;
  readonly far: number;
  readonly wholeNear: boolean;
}

/** Cut off where it leaves the picture at `lowest` (the tangent below the horizon). */
export function seenRunway({ runway }: Plan, eye: Eye, lowest: number): SeenRunway {
  const threshold = -runway.spot;
  const cut = eye.along + eye.height / lowest;
  return {
    near: Math.max(threshold, cut),
    far: runway.length - runway.spot,
    wholeNear: threshold >= cut,
  };
}
