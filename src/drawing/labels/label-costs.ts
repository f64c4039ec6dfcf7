import {
  type Box,
  boxesOverlap,
  boxOf,
  contains,
  distance,
  fromSegment,
  grown,
  type Point,
  type Segment,
  segmentMeetsBox,
  segmentsCross,
  shifted,
  unit,
} from '../kit/geometry.ts';
import type { LabelRequest, PlacedLabel, Surroundings } from './label.ts';
import { gap, pad } from './label-options.ts';

export function labelsCrossed(leader: Segment | undefined, others: readonly PlacedLabel[]): number {
  if (leader === undefined) return 0;
  return others.filter((other) => segmentMeetsBox(leader, other.box, pad)).length;
}

export function leadersMet(leader: Segment | undefined, others: readonly PlacedLabel[]): number {
  if (leader === undefined) return 0;
  const leaders = others.flatMap((other) => other.leader ?? []);
  const crossed = leaders.filter((other) => segmentsCross(leader, other)).length;
  const beside = leaders.filter((other) => comesNear(leader, other, twin));
  const hugged = alongLeader(leader).filter((point) =>
    beside.some((other) => fromSegment(point, other) < twin),
  ).length;
  return 30 * crossed + 2 * hugged;
}

/** mm: two leaders nearer to each other than this look like one. */
const twin = 1.2;

/** For a label so near another that the two read as one block, or as one line. */
export function crowding(box: Box, others: readonly PlacedLabel[]): number {
  const beside = { x: box.x - apart.x, width: box.width + 2 * apart.x };
  const about = { ...beside, y: box.y - apart.y, height: box.height + 2 * apart.y };
  return 6 * others.filter((other) => boxesOverlap(about, other.box)).length;
}

/** mm between two labels: more than between the lines of one, and more than between its words. */
const apart = { x: 2, y: 1.8 };

export function leaderCost(leader: Segment | undefined, { boxes, lines }: Surroundings): number {
  if (leader === undefined) return 0;
  const beside = lines.filter((line) => comesNear(leader, line, line.halfWidth + hugging));
  const crossed = beside.filter((line) => segmentsCross(leader, line)).length;
  const hugged = alongLeader(leader).filter((point) =>
    beside.some((line) => fromSegment(point, line) < line.halfWidth + hugging),
  ).length;
  const marks = boxes.filter((box) => segmentMeetsBox(leader, box, -0.3)).length;
  return 4 * crossed + 1.5 * hugged + 4 * marks;
}

/** mm: a leader nearer to a line than this is read as part of it. */
const hugging = 0.4;

/** False where two pieces are certainly farther apart than `reach`: most are, and this is quick to see. */
function comesNear(a: Segment, b: Segment, reach: number): boolean {
  return (
    Math.max(a.from.x, a.to.x) + reach >= Math.min(b.from.x, b.to.x) &&
    Math.max(b.from.x, b.to.x) + reach >= Math.min(a.from.x, a.to.x) &&
    Math.max(a.from.y, a.to.y) + reach >= Math.min(b.from.y, b.to.y) &&
    Math.max(b.from.y, b.to.y) + reach >= Math.min(a.from.y, a.to.y)
  );
}

/** Points along a leader, past its start: a leader that runs along a line is read as part of it. */
function alongLeader({ from, to }: Segment): Point[] {
  const length = distance(from, to);
  const direction = unit(from, to);
  const points: Point[] = [];
  for (let off = 0.8; off < length; off += 0.8) points.push(shifted(from, direction, off));
  return points;
}

export function hidesFixed(box: Box, { frame, boxes, lines }: Surroundings): boolean {
  const clear = grown(box, pad);
  return (
    !contains(frame, clear) ||
    boxes.some((other) => boxesOverlap(clear, other)) ||
    lines.some((line) => segmentMeetsBox(line, clear, line.halfWidth))
  );
}

export function hidesLabel(box: Box, others: readonly PlacedLabel[]): boolean {
  const clear = grown(box, pad);
  return others.some(
    (other) =>
      boxesOverlap(clear, other.box) || (other.leader !== undefined && segmentMeetsBox(other.leader, clear)),
  );
}

/** The lines and boxes that a label can meet within its reach. */
export function nearbyOnly(request: LabelRequest, { frame, boxes, lines }: Surroundings): Surroundings {
  const far = request.reach + request.radius + gap + Math.max(request.width, request.height) + 3;
  const area = grown(boxOf([request.anchor, ...(request.alternatives ?? [])]), far);
  return {
    frame,
    boxes: boxes.filter((box) => boxesOverlap(box, area)),
    lines: lines.filter((line) => segmentMeetsBox(line, area)),
  };
}
