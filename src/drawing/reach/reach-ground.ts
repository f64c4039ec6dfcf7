import type { GroundPoint } from '../../flight/flying/reach.ts';
import type { Field } from '../../flight/questions/landing-places.ts';
import { spotShare } from '../../flight/questions/landing-places.ts';

/** A field as it is drawn: its corners, and how much of it the glide reaches. */
export interface ReachField {
  readonly name: string;
  readonly corners: readonly GroundPoint[];
  readonly reached: Reached;
}

/** `within`: all of it; `partly`: some corners of it. */
export type Reached = 'within' | 'partly' | 'out';

export const reachedWords: Readonly<Record<Reached, string>> = {
  within: 'within reach',
  partly: 'partly within reach',
  out: 'out of reach',
};

/** A field beside a runway that lands on `runwayHeading` (rad true), with how much of it is inside the outline. */
export function reachField(field: Field, runwayHeading: number, outline: readonly GroundPoint[]): ReachField {
  const corners = fieldCorners(field, runwayHeading);
  const inside = corners.filter((corner) => isInside(corner, outline)).length;
  return {
    name: field.name,
    corners,
    reached: inside === corners.length ? 'within' : inside > 0 ? 'partly' : 'out',
  };
}

/** The corners in order round it: its near end lies a share of its length before its spot. */
function fieldCorners(field: Field, runwayHeading: number): GroundPoint[] {
  const turn = field.heading - runwayHeading;
  const half = field.width / 2;
  const [near, far] = [-spotShare * field.length, (1 - spotShare) * field.length];
  const at = (forward: number, right: number) => ({
    along: field.along + forward * Math.cos(turn) - right * Math.sin(turn),
    across: field.across + forward * Math.sin(turn) + right * Math.cos(turn),
  });
  return [at(near, -half), at(near, half), at(far, half), at(far, -half)];
}

/** Whether a place lies inside a closed ring: a ray from it crosses the ring an odd number of times. */
export function isInside({ along, across }: GroundPoint, ring: readonly GroundPoint[]): boolean {
  let inside = false;
  for (let index = 1; index < ring.length; index += 1) {
    const a = ring[index - 1]!;
    const b = ring[index]!;
    if (a.across > across === b.across > across) continue;
    const crossing = a.along + ((across - a.across) / (b.across - a.across)) * (b.along - a.along);
    if (along < crossing) inside = !inside;
  }
  return inside;
}

/**
 * How far, m, the ring is from a place in a direction (rad from the landing direction): the nearest crossing, so that
 * nothing is promised beyond a dent. Undefined where the ring is not met.
 */
export function distanceToRing(
  from: GroundPoint,
  direction: number,
  ring: readonly GroundPoint[],
): number | undefined {
  const [along, across] = [Math.cos(direction), Math.sin(direction)];
  let nearest: number | undefined;
  for (let index = 1; index < ring.length; index += 1) {
    const a = ring[index - 1]!;
    const b = ring[index]!;
    const off = (point: GroundPoint) =>
      (point.along - from.along) * across - (point.across - from.across) * along;
    const [left, right] = [off(a), off(b)];
    if (left > 0 === right > 0) continue;
    const share = left / (left - right);
    const on = {
      along: a.along + share * (b.along - a.along),
      across: a.across + share * (b.across - a.across),
    };
    const ahead = (on.along - from.along) * along + (on.across - from.across) * across;
    if (ahead > 0 && (nearest === undefined || ahead < nearest)) nearest = ahead;
  }
  return nearest;
}
