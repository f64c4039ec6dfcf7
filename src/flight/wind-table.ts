import { flyPattern } from './fly-pattern.ts';
import type { KeyPosition, PlanRequest } from './plan.ts';
import { workOut } from './planner.ts';
import { sine } from './steady-math.ts';
import { positiveAngle } from './wind.ts';

/** One wind of the table: against the landing direction (negative for a tailwind) and from the right. m/s. */
export interface WindCase {
  readonly headwind: number;
  readonly crosswind: number;
}

/** What an approach looks like in one wind. SI, rad. */
export interface WindRow extends WindCase {
  readonly made: boolean;
  /** m past abeam, and s after the downwind key, at which the base turn starts; undefined for an approach without one. */
  readonly pastAbeam: number | undefined;
  readonly seconds: number | undefined;
  readonly keys: readonly KeyPosition[];
  /** rad: steepest bank flown, and the heading's offset from the track on base, positive to the right. */
  readonly steepestBank: number;
  readonly crabOnBase: number | undefined;
}

/** Flies the approach of a request in each of these winds; its own wind does not count. Throws RequestError. */
export function windTable(request: PlanRequest, winds: readonly WindCase[]): WindRow[] {
  return winds.map((wind) => windRow(request, wind));
}

function windRow(request: PlanRequest, { headwind, crosswind }: WindCase): WindRow {
  const { heading } = request.runway;
  const speed = Math.hypot(headwind, crosswind);
  const from = positiveAngle(heading + Math.atan2(crosswind, headwind));
  const { answer, resolved } = workOut({ ...request, wind: { from, speed }, gust: undefined });
  if (!answer) {
    return {
      headwind,
      crosswind,
      made: false,
      pastAbeam: undefined,
      seconds: undefined,
      keys: [],
      steepestBank: 0,
      crabOnBase: undefined,
    };
  }
  const { flight, keys } = flyPattern(answer.approached.procedure, resolved.conditions, heading);
  const [key, turn] = ['downwind-key', 'base-turn'].map((id) => keys.find((each) => each.id === id));
  const onBase = flight.track.findLast((sample) => sample.phase === 'base');
  const baseTrack = heading + (keys[0]!.across > 0 ? -Math.PI / 2 : Math.PI / 2);
  return {
    headwind,
    crosswind,
    made: answer.made,
    pastAbeam: key && turn && key.along - turn.along,
    seconds: key && turn && turn.time - key.time,
    keys,
    steepestBank: flight.track.reduce((most, { bank }) => Math.max(most, Math.abs(bank)), 0),
    crabOnBase: onBase && Math.asin(sine(onBase.heading - baseTrack)),
  };
}
