import type { Plan } from '../../flight/terms/plan.ts';
import { keyGrade } from '../../words/cautions/grade-words.ts';
import { distance, type Point, type Segment, shifted } from '../kit/geometry.ts';
import type { Mark } from '../kit/marks.ts';
import { type TrackPoint, timedPoints } from '../shared/track-line.ts';
import type { Ground } from './pattern-view.ts';
import { touchesAtSpot } from './pattern-words.ts';

export interface Tick extends TrackPoint {
  readonly numbered: boolean;
}

export function marksOf(plan: Plan, at: (place: Ground) => Point): Mark[] {
  const keys = plan.keys
    .filter((key) => key.id !== 'touchdown' || !touchesAtSpot(plan))
    .map(
      (key): Mark => ({
        kind: key.id === 'aim-point' ? 'aim' : 'key',
        at: at(key),
        grade: keyGrade(plan, key.id),
      }),
    );
  const grade = touchesAtSpot(plan) ? keyGrade(plan, 'touchdown') : undefined;
  return [...keys, { kind: 'spot', at: at({ along: 0, across: 0 }), grade }];
}

/** A stroke across the track every 10 s, every third with its time; none at the start where there is a mark. */
export function ticksOf(plan: Plan, marks: readonly Mark[], at: (place: Ground) => Point): Tick[] {
  return timedPoints(plan.track, 10, 0, at)
    .map((point, index) => ({ ...point, numbered: index % 3 === 0 }))
    .filter((tick, index) => index > 0 || marks.every((mark) => distance(mark.at, tick.at) > 2));
}

export function tickSegment({ at, direction, numbered }: Tick): Segment {
  const side = { x: -direction.y, y: direction.x };
  const reach = numbered ? 1.9 : 1.3;
  return { from: shifted(at, side, -reach), to: shifted(at, side, reach) };
}

/** Arrowheads clear of marks and strokes, one every few centimetres. */
export function spacedArrows(points: readonly TrackPoint[], marks: readonly Mark[], ticks: readonly Tick[]) {
  const arrows: TrackPoint[] = [];
  for (const point of points) {
    const middle = shifted(point.at, point.direction, -1.2);
    const clear =
      marks.every((mark) => distance(mark.at, middle) > 4) &&
      ticks.every((tick) => distance(tick.at, middle) > 2.4);
    const last = arrows.at(-1);
    const spaced = last === undefined || distance(last.at, point.at) > 24;
    if (clear && spaced && arrows.every((other) => distance(other.at, point.at) > 10)) arrows.push(point);
  }
  return arrows;
}
