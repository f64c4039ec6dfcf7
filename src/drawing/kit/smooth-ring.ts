import { type Point, shifted, unit } from './geometry.ts';

/** Points drawn between one point of the ring and the next. */
const pieces = 4;
/** Cosine of 25°, the turn from which a point counts as a corner and stays one. */
const corner = Math.cos((25 * Math.PI) / 180);

/**
 * A closed ring (first and last point the same) as a smooth line through each of its points: cubic Hermite pieces, at
 * each point along the chord from the one before to the one after it (E. Catmull and R. Rom, "A class of local
 * interpolating splines", in Computer Aided Geometric Design, 1974; from memory). Where the ring turns sharply it
 * keeps its corner.
 */
export function smoothRing(ring: readonly Point[]): Point[] {
  const points = ring.slice(0, -1);
  const at = (index: number) => points[(index + points.length) % points.length]!;
  const smooth: Point[] = points.slice(0, 1);
  for (let index = 0; index < points.length; index += 1) {
    const [a, b] = [at(index), at(index + 1)];
    const from = { at: a, direction: tangent(at(index - 1), a, b) ?? unit(a, b) };
    const to = { at: b, direction: tangent(a, b, at(index + 2)) ?? unit(a, b) };
    for (let piece = 1; piece <= pieces; piece += 1) smooth.push(hermite(from, to, piece / pieces));
  }
  return smooth;
}

/** Unit vector of the line at `b`; undefined where it has a corner there. */
function tangent(a: Point, b: Point, c: Point): Point | undefined {
  const [before, after] = [unit(a, b), unit(b, c)];
  return before.x * after.x + before.y * after.y < corner ? undefined : unit(a, c);
}

/** A point of the ring, and the unit vector of the smooth line through it. */
interface Knot {
  readonly at: Point;
  readonly direction: Point;
}

function hermite({ at: a, direction: out }: Knot, { at: b, direction: into }: Knot, t: number): Point {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const along = (t ** 3 - 2 * t ** 2 + t) * length;
  const back = (t ** 3 - t ** 2) * length;
  const share = 3 * t ** 2 - 2 * t ** 3;
  const chord = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  return shifted(shifted(chord, out, along), into, back);
}
