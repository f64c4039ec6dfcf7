import { flownWindAt } from '../air/flown-wind.ts';
import { crosswind, positiveAngle } from '../air/wind.ts';
import { sine } from '../numerics/steady-math.ts';
import { planApproach } from '../plan/planner.ts';
import type { Caution, PlanGrade } from '../terms/caution.ts';
import { RequestError } from '../terms/errors.ts';
import type { KeyPosition, Plan, PlanRequest } from '../terms/plan.ts';

/** One wind of the table: against the landing direction (negative for a tailwind) and from the right, m/s, at 10 m. */
export interface WindCase {
  readonly headwind: number;
  readonly crosswind: number;
  /** rad: how far it turns clockwise up to 1,000 ft; left out, as over the airfield. */
  readonly veer?: number | undefined;
}

/** What an approach looks like in one wind. SI, rad. */
export interface WindRow extends WindCase {
  readonly made: boolean;
  /** m past abeam, and s after the downwind key, at which the base turn starts; undefined for an approach without one. */
  readonly pastAbeam: number | undefined;
  readonly seconds: number | undefined;
  /** For an approach that is not made: of the flight that shows why, where there is one. */
  readonly keys: readonly KeyPosition[];
  /** rad: steepest bank flown, and the heading's offset from the track on base, positive to the right. */
  readonly steepestBank: number;
  readonly crabOnBase: number | undefined;
  /** m/s: the wind from the right at the downwind key, or at the first key of an approach that has none. */
  readonly acrossAtKey: number | undefined;
  /** The cautions of that flight, and the gravest grade among them. */
  readonly cautions: readonly Caution[];
  readonly grade: PlanGrade;
  /** Why nothing at all can be flown in this wind. */
  readonly refused?: RequestError | undefined;
}

/**
 * Flies the approach of a request in each of these winds; the request's own wind and gust do not count. Throws
 * RequestError for a request that cannot be flown in any wind.
 */
export function windTable(request: PlanRequest, winds: readonly WindCase[]): WindRow[] {
  return winds.map((wind) => {
    const flown = flyIn(request, wind);
    return flown instanceof RequestError ? refusedRow(flown, wind) : windRow(flown, wind);
  });
}

/** The flight of a request in another wind; or why not, where only that wind keeps the request from being flown. */
function flyIn(request: PlanRequest, wind: WindCase): Plan | RequestError {
  try {
    return planApproach(inWind(request, wind));
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    // What is wrong with the request itself is wrong in a calm as well, and is thrown there.
    planApproach(inWind(request, { headwind: 0, crosswind: 0 }));
    return error;
  }
}

/** The request in another wind, without a gust and for the flight alone. */
export function inWind(request: PlanRequest, { headwind, crosswind, veer }: WindCase): PlanRequest {
  const from = positiveAngle(request.runway.heading + Math.atan2(crosswind, headwind));
  const wind = { from, speed: Math.hypot(headwind, crosswind) };
  const airfield = veer === undefined ? request.airfield : { ...request.airfield, windVeer: veer };
  return { ...request, airfield, wind, gust: undefined, detail: 'flight' };
}

function windRow(plan: Plan, wind: WindCase): WindRow {
  const { keys, track, runway, made, cautions, grade } = plan;
  const [key, turn] = ['downwind-key', 'base-turn'].map((id) => keys.find((each) => each.id === id));
  const onBase = track.findLast((sample) => sample.phase === 'base');
  const baseTrack = runway.heading + (keys[0]!.across > 0 ? -Math.PI / 2 : Math.PI / 2);
  return {
    ...wind,
    made,
    pastAbeam: key && turn && key.along - turn.along,
    seconds: key && turn && turn.time - key.time,
    keys,
    steepestBank: track.reduce((most, { bank }) => Math.max(most, Math.abs(bank)), 0),
    crabOnBase: onBase && Math.asin(sine(onBase.heading - baseTrack)),
    acrossAtKey: crosswind(flownWindAt(plan, (key ?? keys[0]!).height), runway.heading),
    cautions,
    grade,
  };
}

function refusedRow(refused: RequestError, wind: WindCase): WindRow {
  return {
    ...wind,
    ...{ made: false, pastAbeam: undefined, seconds: undefined, keys: [], steepestBank: 0 },
    ...{
      crabOnBase: undefined,
      acrossAtKey: undefined,
      cautions: [],
      grade: 'not-to-be-flown',
      refused,
    },
  };
}
