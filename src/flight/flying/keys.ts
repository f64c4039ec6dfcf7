import type { KeyId } from '../terms/key.ts';
import type { KeyPosition, TrackSample } from '../terms/plan.ts';

/** The key position where the flight was at a sample. */
export function keyAt(id: KeyId, sample: TrackSample): KeyPosition {
  const { time, along, across, height } = sample;
  return { id, time, along, across, height };
}

/**
 * The base key: the point of base leg from which the spot lies 45 degrees off the track, or the point of wings level
 * on base where that comes later. `baseLeg` runs from the sample with the wings level to the last one before the
 * final turn.
 */
export function baseKey(baseLeg: readonly TrackSample[]): KeyPosition | undefined {
  const [first] = baseLeg;
  if (!first) return undefined;
  const past45 = (s: TrackSample) => Math.abs(s.along) - Math.abs(s.across);
  for (let i = 1; i < baseLeg.length && past45(first) < 0; i++) {
    const [before, after] = [baseLeg[i - 1]!, baseLeg[i]!];
    if (past45(after) >= 0) {
      const share = past45(before) / (past45(before) - past45(after));
      return keyAt('base-key', between(before, after, share));
    }
  }
  return keyAt('base-key', first);
}

/** A straight leg between two samples is flown at so steady a rate that a straight line between them is exact
 * to centimetres. */
export function between(a: TrackSample, b: TrackSample, share: number): TrackSample {
  const mix = (x: number, y: number) => x + share * (y - x);
  return {
    ...b,
    time: mix(a.time, b.time),
    along: mix(a.along, b.along),
    across: mix(a.across, b.across),
    height: mix(a.height, b.height),
  };
}
