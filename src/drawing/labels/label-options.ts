import {
  type Box,
  distance,
  grown,
  nearestInBox,
  type Point,
  pageVector,
  type Segment,
  shifted,
  unit,
} from '../kit/geometry.ts';
import type { LabelRequest, PlacedLabel } from './label.ts';

/** mm: kept free around a label; between a mark and its label; the distance from which a leader is drawn. */
export const pad = 0.6;
export const gap = 0.9;
const leaderFrom = 1.4;
const directions = Array.from({ length: 24 }, (_, index) => pageVector((index * Math.PI) / 12));
const steps = [0, 0.8, 1.8, 3, 4.5, 6.5, 9, 12, 16, 21, 27, 34, 42, 52];

/** A place that a label might take; what it costs beside fixed things is worked out once, when first asked for. */
export interface Option {
  readonly place: PlacedLabel;
  /** The cost is never less than this. */
  readonly least: number;
  /** With the leader's crossings; infinite where the label hides something fixed. */
  cost?: number;
}

export function sorted(options: Iterable<Option>): Option[] {
  return [...options].sort((a, b) => a.least - b.least);
}

/** Around each anchor, at growing distances in every direction. */
export function* nearCandidates(request: LabelRequest): Generator<Option> {
  for (const [rank, anchor] of [request.anchor, ...(request.alternatives ?? [])].entries()) {
    for (const box of boxesAbout(request, anchor)) {
      const place = placeAt(request, anchor, box);
      yield { place, least: leastCost(request, anchor, place) + 0.4 * rank };
    }
  }
}

/** On a grid over the frame, for when all of the near places are taken. */
export function* farCandidates(request: LabelRequest, frame: Box): Generator<Option> {
  const { anchor, radius, width, height, reach } = request;
  const pitch = 2.5;
  for (let y = frame.y + 1; y + height < frame.y + frame.height; y += pitch) {
    for (let x = frame.x + 1; x + width < frame.x + frame.width; x += pitch) {
      const box = { x, y, width, height };
      const off = distance(anchor, nearestInBox(box, anchor));
      if (off <= radius + gap || off > reach) continue;
      const place = placeAt(request, anchor, box);
      yield { place, least: leastCost(request, anchor, place) };
    }
  }
}

function* boxesAbout({ radius, width, height, reach }: LabelRequest, anchor: Point): Generator<Box> {
  for (const step of steps) {
    if (step > reach) break;
    for (const direction of directions) {
      // √2: on a diagonal the box touches with its corner, not its side.
      const lean = (part: number, extent: number) =>
        (Math.min(Math.max(part * Math.SQRT2, -1), 1) * extent) / 2;
      const centre = shifted(anchor, direction, radius + gap + step);
      yield {
        x: centre.x + lean(direction.x, width) - width / 2,
        y: centre.y + lean(direction.y, height) - height / 2,
        width,
        height,
      };
    }
  }
}

export function placeAt(request: LabelRequest, anchor: Point, box: Box): PlacedLabel {
  const { radius } = request;
  const end = nearestInBox(grown(box, pad / 2), anchor);
  const off = distance(anchor, nearestInBox(box, anchor));
  const leader =
    off > radius + gap + leaderFrom && !request.plain
      ? { from: shifted(anchor, unit(anchor, end), radius), to: end }
      : undefined;
  const side = box.x >= anchor.x ? 'start' : box.x + box.width <= anchor.x ? 'end' : 'middle';
  return { id: request.id, box, leader, side, clear: true };
}

function leastCost({ radius, prefer, slanted }: LabelRequest, anchor: Point, place: PlacedLabel): number {
  const nearest = nearestInBox(place.box, anchor);
  const centre = { x: place.box.x + place.box.width / 2, y: place.box.y + place.box.height / 2 };
  const away = Math.max(0, distance(anchor, nearest) - radius - gap);
  const direction = unit(anchor, centre);
  const turned = prefer ? 1 - (prefer.x * direction.x + prefer.y * direction.y) : 0;
  const upright = slanted && place.leader && isUpright(place.leader) ? 25 : 0;
  return away + 1.6 * turned + (place.leader ? 1.5 : 0) + upright;
}

/** Less than 27° from the vertical. */
function isUpright({ from, to }: Segment): boolean {
  return Math.abs(to.x - from.x) < Math.abs(to.y - from.y) / 2;
}
