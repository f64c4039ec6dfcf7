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
} from './geometry.ts';
import type { LabelRequest, PlacedLabel, Surroundings } from './label.ts';
import { gap, pad } from './label-options.ts';

export function labelsCrossed(leader: Segment | undefined, others: readonly PlacedLabel[]): number {
  if (leader === undefined) return 0;
  return others.filter((other) => segmentMeetsBox(leader, other.box, pad)).length;
}

export function leadersCrossed(leader: Segment | undefined, others: readonly PlacedLabel[]): number {
  if (leader === undefined) return 0;
  return 30 * others.filter((other) => other.leader && segmentsCross(leader, other.leader)).length;
}

export function leaderCost(leader: Segment | undefined, { boxes, lines }: Surroundings): number {
  if (leader === undefined) return 0;
  const crossed = lines.filter((line) => segmentsCross(leader, line)).length;
  const hugged = alongLeader(leader).filter((point) =>
    lines.some((line) => fromSegment(point, line) < line.halfWidth + 0.4),
  ).length;
  const marks = boxes.filter((box) => segmentMeetsBox(leader, box, -0.3)).length;
  return 4 * crossed + 1.5 * hugged + 4 * marks;
}

/** Points of a leader, past its start: a leader that runs along a line is read as part of it. */
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

/** The lines and boxes that a label within its reach can meet. */
export function nearbyOnly(request: LabelRequest, { frame, boxes, lines }: Surroundings): Surroundings {
  const far = request.reach + request.radius + gap + Math.max(request.width, request.height) + 3;
  const area = grown(boxOf([request.anchor, ...(request.alternatives ?? [])]), far);
  return {
    frame,
    boxes: boxes.filter((box) => boxesOverlap(box, area)),
    lines: lines.filter((line) => segmentMeetsBox(line, area)),
  };
}
