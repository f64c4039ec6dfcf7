import type { Conditions } from './conditions.ts';
import { type Flight, flyProcedure } from './fly.ts';
import { baseKey, keyAt, keyLabels } from './keys.ts';
import type { KeyPosition, TrackSample } from './plan.ts';
import type { Procedure } from './procedure.ts';

/** An approach round a pattern, flown to the ground. */
export interface FlownPattern {
  readonly flight: Flight;
  readonly keys: readonly KeyPosition[];
  /** m along, where the path of final meets the ground if nothing is done; undefined where final is not reached. */
  readonly aimPoint: number | undefined;
  /** m along, where the round-out is level; undefined where the flight did not come to it. */
  readonly levelAt: number | undefined;
}

/** Flies a procedure from the downwind key round the pattern and notes its key positions. */
export function flyPattern(
  procedure: Procedure,
  conditions: Conditions,
  runwayHeading: number,
  step?: number,
): FlownPattern {
  const legEnds = new Map<string, number>();
  const flight = flyProcedure(
    procedure,
    conditions,
    runwayHeading,
    (leg, { track }) => legEnds.set(leg.kind === 'landing' ? 'landing' : leg.phase, track.length - 1),
    step,
  );
  const { track } = flight;
  const at = (leg: string) => track[legEnds.get(leg) ?? track.length - 1]!;
  const complete = track.some((sample) => sample.phase === 'hold-off');
  const baseLeg = track.slice(
    legEnds.get('base-turn'),
    (legEnds.get('base') ?? legEnds.get('base-turn')!) + 1,
  );
  const keys: KeyPosition[] = [keyAt('downwind-key', track[0]!), keyAt('base-turn', at('downwind'))];
  const onBase = baseKey(baseLeg);
  if (onBase) keys.push(onBase);
  keys.push(keyAt('final-turn', baseLeg.at(-1)!), keyAt('final', at('final-turn')));
  const aimPoint = complete ? glidePathGroundPoint(at('final')) : undefined;
  if (aimPoint !== undefined) keys.push(aimKey(aimPoint, track));
  const last = track.at(-1)!;
  keys.push(keyAt('touchdown', last));
  return { flight, keys, aimPoint, levelAt: track.findLast((sample) => sample.phase === 'round-out')?.along };
}

/** The glide path of final drawn on to the ground: the aiming point of FAA-H-8083-3, chapter 9. m along. */
function glidePathGroundPoint(endOfFinal: TrackSample): number {
  return endOfFinal.along + (endOfFinal.height * endOfFinal.groundspeed) / endOfFinal.sink;
}

/** The aim point lies on the ground; its time is when the aircraft passes over it. */
function aimKey(along: number, track: readonly TrackSample[]): KeyPosition {
  const i = track.findIndex(
    (sample) => sample.phase !== 'downwind' && sample.along >= along && isLanding(sample),
  );
  const [before, after] = [track[i - 1], track[i]];
  const share = before && after ? (along - before.along) / (after.along - before.along) : 0;
  const time = before && after ? before.time + share * (after.time - before.time) : track.at(-1)!.time;
  const across = after?.across ?? track.at(-1)!.across;
  return { id: 'aim-point', label: keyLabels['aim-point'], time, along, across, height: 0 };
}

function isLanding(sample: TrackSample): boolean {
  return sample.phase === 'final' || sample.phase === 'round-out' || sample.phase === 'hold-off';
}
