import { inducedDragReduction } from '../../flight/aircraft/ground-effect.ts';
import type { Plan, TrackSample } from '../../flight/terms/plan.ts';

/** The end of a landing as it is flown, in stretches; each begins with the sample that the one before ends with. */
export interface LandingEnd {
  readonly final: readonly TrackSample[];
  readonly roundOut: readonly TrackSample[];
  readonly holdOff: readonly TrackSample[];
}

/** Final is shown from this many times the height at which the round-out begins. */
const finalShown = 3;

/** Undefined where the plan has no round-out. */
export function landingEnd({ track }: Plan): LandingEnd | undefined {
  const pull = track.findIndex(({ phase }) => phase === 'round-out');
  const hold = track.findIndex(({ phase }) => phase === 'hold-off');
  if (pull < 1 || hold < pull) return undefined;
  // A sample has the phase that ends with it: the pull begins at the last sample before.
  const begins = track[pull - 1]!;
  const from = landingStart(track, finalShown * begins.height);
  if (from === -1 || from >= pull) return undefined;
  return {
    final: track.slice(from, pull),
    roundOut: track.slice(pull - 1, hold),
    holdOff: track.slice(hold - 1),
  };
}

/** The first sample of final as low as `height` m; -1 where there is none. */
export function landingStart(track: readonly TrackSample[], height: number): number {
  return track.findIndex((sample) => sample.phase === 'final' && sample.height <= height);
}

/** The share of the induced drag that ground effect removes with the wheels at this height, m. */
export function dragSaved({ aircraft: { wing } }: Plan, wheelHeight: number): number {
  return inducedDragReduction((Math.max(wheelHeight, 0) + wing.aboveWheels) / wing.span);
}

/** A place on the path of the wheels, m. */
export interface PathPoint {
  readonly along: number;
  readonly height: number;
}

/** Points drawn between one sample and the next. */
const pieces = 8;

/**
 * The path between the samples: through each of them at the slope flown there (sink over ground speed), by cubic
 * Hermite interpolation. The samples are half a second apart, which would show as corners in a round-out drawn large.
 */
export function pathOf(samples: readonly TrackSample[]): PathPoint[] {
  const path: PathPoint[] = samples.slice(0, 1);
  for (const [index, b] of samples.slice(1).entries()) {
    const a = samples[index]!;
    const run = b.along - a.along;
    const [into, out] = [slope(a) * run, slope(b) * run];
    for (let piece = 1; piece <= pieces; piece += 1) {
      const t = piece / pieces;
      const height =
        (2 * t ** 3 - 3 * t ** 2 + 1) * a.height +
        (t ** 3 - 2 * t ** 2 + t) * into +
        (3 * t ** 2 - 2 * t ** 3) * b.height +
        (t ** 3 - t ** 2) * out;
      path.push({ along: a.along + t * run, height });
    }
  }
  return path;
}

function slope({ sink, groundspeed }: TrackSample): number {
  return -sink / groundspeed;
}
