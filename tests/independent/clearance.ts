import type { Obstacle } from '../../src/flight/terms/airfield.ts';

/** A place on a path: the height of the wheels, the heading from the landing direction and the bank (rad). */
export interface PathPoint {
  readonly along: number;
  readonly across: number;
  readonly height: number;
  readonly heading: number;
  readonly bank: number;
  /** In the round-out and the hold-off less is asked for. */
  readonly landing: boolean;
}

export interface Wing {
  readonly span: number;
  readonly aboveWheels: number;
}

/** m, in space: `over` where a part of the wing is over the obstacle, else `near`. */
export interface Asked {
  readonly over: number;
  readonly near: number;
  readonly nearInLanding: number;
}

/** The place of a path that has the least of the distance asked for. */
export interface Clearance {
  /** m in space. 0 where the obstacle is met. */
  readonly distance: number;
  /** m: what was asked for there. */
  readonly asked: number;
  readonly index: number;
}

/** m over the ground: a path is sampled, so this near to a wall of no thickness it is taken to be over it. */
const overIt = 0.3;

type Point = readonly [along: number, across: number];
type Segment = readonly [Point, Point];

/**
 * By brute force, over a densely sampled path: the distance in space from an obstacle to the wing, brought down to
 * the height of the wheels, from tip to tip square to the heading, and to the tips where the bank puts them. An
 * obstacle is a wall across the landing direction: from the ground to its height, as wide as it is, with no
 * thickness.
 */
export function clearanceOf(
  path: readonly PathPoint[],
  wing: Wing,
  obstacle: Obstacle,
  asked: Asked,
): Clearance {
  const half = obstacle.width / 2;
  const { along, across } = obstacle;
  const wall: Segment = [
    [along, across - half],
    [along, across + half],
  ];
  const most = Math.max(asked.over, asked.near, asked.nearInLanding);
  const reach = wing.span + wing.aboveWheels + most;
  let worst: Clearance = { distance: Number.POSITIVE_INFINITY, asked: 1, index: -1 };
  path.forEach((point, index) => {
    if (point.height > obstacle.height + reach || Math.abs(point.along - along) > reach) return;
    if (Math.abs(point.across - across) > reach + half) return;
    for (const { aside, above } of partsOf(point, wing, wall, obstacle.height)) {
      const distance = Math.hypot(aside, above);
      const near = point.landing ? asked.nearInLanding : asked.near;
      const limit = aside < overIt ? Math.max(asked.over, near) : near;
      if (distance / limit < worst.distance / worst.asked) worst = { distance, asked: limit, index };
    }
  });
  return worst;
}

/** m over the ground from the wall, and above its top: the strip at the wheels, the tips of the banked wing. */
function partsOf(
  { along, across, height, heading, bank }: PathPoint,
  wing: Wing,
  wall: Segment,
  top: number,
) {
  const right: Point = [-Math.sin(heading), Math.cos(heading)];
  const off = (metres: number): Point => [along + metres * right[0], across + metres * right[1]];
  const half = wing.span / 2;
  const strip = { aside: apart([off(-half), off(half)], wall), above: Math.max(0, height - top) };
  const tips = [-half, half].map((tip) => {
    const aside = tip * Math.cos(bank) + wing.aboveWheels * Math.sin(bank);
    const up = height + wing.aboveWheels * Math.cos(bank) - tip * Math.sin(bank);
    return { aside: toSegment(off(aside), wall), above: Math.max(0, up - top) };
  });
  return [strip, ...tips];
}

/** Between two segments on the map: 0 where they cross, else from an end of one to the other. */
function apart(a: Segment, b: Segment): number {
  const turn = (p: Point, q: Point, r: Point) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  const sides = (s: Segment, t: Segment) => turn(s[0], s[1], t[0]) * turn(s[0], s[1], t[1]);
  if (sides(a, b) < 0 && sides(b, a) < 0) return 0;
  return Math.min(toSegment(a[0], b), toSegment(a[1], b), toSegment(b[0], a), toSegment(b[1], a));
}

function toSegment([x, y]: Point, [[ax, ay], [bx, by]]: Segment): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const share = length > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
