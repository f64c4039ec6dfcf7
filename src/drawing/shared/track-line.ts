import type { Phase, TrackSample } from '../../flight/terms/plan.ts';
import { distance, type Point, unit } from '../kit/geometry.ts';

/** A stretch of the track, flown either straight or turning. */
export interface Stretch {
  readonly turning: boolean;
  readonly points: readonly Point[];
}

/** A place on the track at a time. */
export interface TrackPoint {
  readonly time: number;
  readonly at: Point;
  /** Unit vector of the direction of flight over the ground. */
  readonly direction: Point;
}

/** Phases flown turning, however small the bank. */
const turns: ReadonlySet<Phase> = new Set(['circle', 'base-turn', 'final-turn']);
/** rad: from this bank on, any phase is drawn as a turn. */
const turningBank = (4 * Math.PI) / 180;

/** The track in stretches, straight and turning; each begins where the one before ends. */
export function stretches(
  track: readonly TrackSample[],
  place: (sample: TrackSample) => Point,
): readonly Stretch[] {
  const found: { turning: boolean; points: Point[] }[] = [];
  for (const sample of track) {
    const turning = turns.has(sample.phase) || Math.abs(sample.bank) >= turningBank;
    const point = place(sample);
    const current = found.at(-1);
    if (current === undefined) found.push({ turning, points: [point] });
    else {
      current.points.push(point);
      if (current.turning !== turning) found.push({ turning, points: [point] });
    }
  }
  return found.filter((stretch) => stretch.points.length > 1);
}

/** The place at `time` (s), between two samples; undefined outside the flown time. */
function trackPoint(
  track: readonly TrackSample[],
  time: number,
  place: (sample: TrackSample) => Point,
): TrackPoint | undefined {
  const after = track.findIndex((sample) => sample.time >= time && sample.time > track[0]!.time);
  if (after < 1 || time < track[0]!.time) return undefined;
  const a = track[after - 1]!;
  const b = track[after]!;
  const from = place(a);
  const to = place(b);
  const part = b.time === a.time ? 0 : (time - a.time) / (b.time - a.time);
  if (distance(from, to) === 0) return undefined;
  return {
    time,
    at: { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part },
    direction: unit(from, to),
  };
}

/** Places every `interval` s from the start, the first of them `offset` s after it. */
export function timedPoints(
  track: readonly TrackSample[],
  interval: number,
  offset: number,
  place: (sample: TrackSample) => Point,
): TrackPoint[] {
  const start = track[0]?.time ?? 0;
  const end = track.at(-1)?.time ?? 0;
  const found: TrackPoint[] = [];
  for (let time = start + offset; time < end; time += interval) {
    const point = trackPoint(track, time, place);
    if (point) found.push(point);
  }
  return found;
}

/** m flown over the ground from each sample to the last one. */
export function distanceToGo(track: readonly TrackSample[]): number[] {
  const toGo = new Array<number>(track.length).fill(0);
  for (let index = track.length - 2; index >= 0; index -= 1) {
    const a = track[index]!;
    const b = track[index + 1]!;
    toGo[index] = toGo[index + 1]! + Math.hypot(b.along - a.along, b.across - a.across);
  }
  return toGo;
}
