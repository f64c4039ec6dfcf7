/** Points, boxes and segments on the page: mm, x to the right, y downward. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Segment {
  readonly from: Point;
  readonly to: Point;
}

/** The unit vector of a bearing on the page: 0 is up, clockwise, rad. */
export function pageVector(bearing: number): Point {
  return { x: Math.sin(bearing), y: -Math.cos(bearing) };
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

export function shifted(point: Point, direction: Point, by: number): Point {
  return { x: point.x + direction.x * by, y: point.y + direction.y * by };
}

/** The unit vector from one point to another; zero where they coincide. */
export function unit(from: Point, to: Point): Point {
  const length = distance(from, to);
  return length === 0 ? { x: 0, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

export function around(centre: Point, radius: number): Box {
  return { x: centre.x - radius, y: centre.y - radius, width: 2 * radius, height: 2 * radius };
}

export function boxOf(points: readonly Point[]): Box {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** The point at a share of the way from one end of a segment to the other. */
export function between({ from, to }: Segment, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** Grown by `by` on every side; shrunk where `by` is negative. */
export function grown(box: Box, by: number): Box {
  return { x: box.x - by, y: box.y - by, width: box.width + 2 * by, height: box.height + 2 * by };
}

export function contains(outer: Box, inner: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** The point of the box nearest to `point`. */
export function nearestInBox(box: Box, point: Point): Point {
  return {
    x: Math.min(Math.max(point.x, box.x), box.x + box.width),
    y: Math.min(Math.max(point.y, box.y), box.y + box.height),
  };
}

/** Whether any part of the segment lies in the box grown by `by` (Liang and Barsky's clipping test). */
export function segmentMeetsBox({ from, to }: Segment, box: Box, by = 0): boolean {
  const left = box.x - by;
  const right = box.x + box.width + by;
  const top = box.y - by;
  const bottom = box.y + box.height + by;
  // Most segments lie wholly to one side.
  if ((from.x < left && to.x < left) || (from.x > right && to.x > right)) return false;
  if ((from.y < top && to.y < top) || (from.y > bottom && to.y > bottom)) return false;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  for (const [step, room] of [
    [-dx, from.x - left],
    [dx, right - from.x],
    [-dy, from.y - top],
    [dy, bottom - from.y],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
    } else if (step < 0) enter = Math.max(enter, room / step);
    else leave = Math.min(leave, room / step);
  }
  return enter <= leave;
}

export function segmentsCross(a: Segment, b: Segment): boolean {
  const side = (s: Segment, p: Point) =>
    (s.to.x - s.from.x) * (p.y - s.from.y) - (s.to.y - s.from.y) * (p.x - s.from.x);
  return side(a, b.from) * side(a, b.to) < 0 && side(b, a.from) * side(b, a.to) < 0;
}

/** How far a point lies from a segment. */
export function fromSegment(point: Point, { from, to }: Segment): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const part = square === 0 ? 0 : ((point.x - from.x) * dx + (point.y - from.y) * dy) / square;
  const reach = Math.min(Math.max(part, 0), 1);
  return Math.hypot(point.x - from.x - reach * dx, point.y - from.y - reach * dy);
}

/** A polyline's segments. */
export function segmentsOf(points: readonly Point[]): Segment[] {
  return points.slice(1).map((to, index) => ({ from: points[index]!, to }));
}

/**
 * The same line with fewer points: none of those left out is farther than `tolerance` mm from it (Douglas and
 * Peucker's method).
 */
export function simplified(points: readonly Point[], tolerance: number): Point[] {
  if (points.length < 3) return [...points];
  const first = points[0]!;
  const last = points.at(-1)!;
  const chord = { from: first, to: last };
  let farthest = 0;
  let at = 0;
  for (let index = 1; index < points.length - 1; index += 1) {
    const off = fromSegment(points[index]!, chord);
    if (off > farthest) {
      farthest = off;
      at = index;
    }
  }
  if (farthest <= tolerance) return [first, last];
  return [
    ...simplified(points.slice(0, at + 1), tolerance).slice(0, -1),
    ...simplified(points.slice(at), tolerance),
  ];
}
