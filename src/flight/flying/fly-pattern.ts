import type { KeyPosition, Phase, TrackSample } from '../terms/plan.ts';
import type { Conditions } from './conditions.ts';
import { type Flight, flyProcedure } from './fly.ts';
import { baseKey, keyAt } from './keys.ts';
import type { Procedure } from './procedure.ts';

/** An approach flown to the ground. */
export interface FlownPattern {
  readonly flight: Flight;
  readonly keys: readonly KeyPosition[];
  /** m along: where the path of final meets the ground if nothing is done; undefined where final is not reached. */
  readonly aimPoint: number | undefined;
  /** m along: where the round-out is level; undefined where the flight did not get that far. */
  readonly levelAt: number | undefined;
}

/** m. A plan makes the spot if its wheels touch no farther from it than this. */
export const atSpot = 0.1;

/** True where a flight was flown to its end, came level, and put its wheels on the ground at the spot. */
export function endsAtSpot({ flight, levelAt }: FlownPattern): boolean {
  const last = flight.track.at(-1)!;
  return (
    flight.flyable &&
    levelAt !== undefined &&
    last.phase === 'hold-off' &&
    Math.abs(last.height) < 1e-3 &&
    Math.hypot(last.along, last.across) <= atSpot
  );
}

/** Flies a procedure through the air as it is, to the ground, and notes its key positions. */
export function flyPattern(
  procedure: Procedure,
  conditions: Conditions,
  runwayHeading: number,
  step?: number,
): FlownPattern {
  const flight = flyProcedure(procedure, conditions, runwayHeading, step);
  const { track } = flight;
  const keys: KeyPosition[] = [];
  const note = (id: KeyPosition['id'], sample: TrackSample | undefined) => {
    if (sample) keys.push(keyAt(id, sample));
  };
  if (track[0]!.phase === 'circle') note('overhead', track[0]);
  note('downwind-key', startOf('downwind', track));
  note('base-turn', endOf('downwind', track));
  const onBase = baseKey(legOf('base', track)) ?? keyed('base-key', endOf('base-turn', track));
  if (onBase) keys.push(onBase);
  note('final-turn', startOf('final-turn', track));
  note('final', endOf('final-turn', track));
  const complete = track.some((sample) => sample.phase === 'hold-off');
  const endOfFinal = endOf('final', track);
  const aimPoint = complete && endOfFinal ? glidePathGroundPoint(endOfFinal) : undefined;
  if (aimPoint !== undefined) keys.push(aimKey(aimPoint, track));
  keys.push(keyAt('touchdown', track.at(-1)!));
  return { flight, keys, aimPoint, levelAt: endOf('round-out', track)?.along };
}

/** The samples of a leg, from the one at which it begins; empty where it was not flown. */
function legOf(phase: Phase, track: readonly TrackSample[]): readonly TrackSample[] {
  const first = track.findIndex((sample) => sample.phase === phase);
  if (first < 0) return [];
  return track.slice(Math.max(0, first - 1), track.findLastIndex((sample) => sample.phase === phase) + 1);
}

const startOf = (phase: Phase, track: readonly TrackSample[]) => legOf(phase, track)[0];
const endOf = (phase: Phase, track: readonly TrackSample[]) => legOf(phase, track).at(-1);

function keyed(id: KeyPosition['id'], sample: TrackSample | undefined): KeyPosition | undefined {
  return sample && keyAt(id, sample);
}

/** The glide path of final extended to the ground: the aiming point of FAA-H-8083-3, chapter 9. m along. */
function glidePathGroundPoint(endOfFinal: TrackSample): number {
  return endOfFinal.along + (endOfFinal.height * endOfFinal.groundspeed) / endOfFinal.sink;
}

/** The aim point is on the ground; its time is when the aircraft passes over it. */
function aimKey(along: number, track: readonly TrackSample[]): KeyPosition {
  const landing = track.filter(
    ({ phase }) => phase === 'final' || phase === 'round-out' || phase === 'hold-off',
  );
  const i = landing.findIndex((sample) => sample.along >= along);
  const [before, after] = [landing[i - 1], landing[i]];
  const share = before && after ? (along - before.along) / (after.along - before.along) : 0;
  const time = before && after ? before.time + share * (after.time - before.time) : track.at(-1)!.time;
  const across = after?.across ?? track.at(-1)!.across;
  return { id: 'aim-point', time, along, across, height: 0 };
}
