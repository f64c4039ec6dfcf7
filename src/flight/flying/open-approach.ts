import { loadFactor, stallSpeedUnder } from '../aircraft/turns.ts';
import { rootInBracket, rootNear } from '../numerics/root.ts';
import type { Conditions } from './conditions.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEIGHT } from './motions.ts';
import type { Leg, Procedure, Start } from './procedure.ts';

/** An approach with one thing left open in each stage: how it comes on to the centreline. */
export interface OpenApproach {
  readonly start: Start;
  /** The first brings the aircraft on to final; a second is an S-turn on final. */
  readonly stages: readonly Stage[];
  /** From wings level on final to the touchdown. */
  readonly after: readonly Leg[];
}

/** Legs that end on the centreline, wings level. */
export interface Stage {
  readonly before: readonly Leg[];
  /** Undefined where the legs before it end on the centreline by themselves. */
  readonly join?: Join | undefined;
}

/**
 * Legs that end wings level on final, made from one number (where the turn to final starts, or the bank of a single
 * turn), which is found so that they end on the centreline.
 */
export interface Join {
  readonly legs: (unknown: number) => readonly Leg[];
  /** A likely value; the search starts from it. */
  readonly guess: number;
  /** Roughly by how much the place across the runway changes with the unknown. */
  readonly slope: number;
  /** Where given, the unknown is in this range and the search keeps to it. */
  readonly within?: readonly [low: number, high: number] | undefined;
}

/** An approach brought on to its centreline and flown to the touchdown, with the ground ignored before that. */
export interface ClosedApproach {
  readonly procedure: Procedure;
  /** m, the touchdown past the spot; negative for short. */
  readonly miss: number;
  /** m, wings level on final for the first time. */
  readonly finalHeight: number;
  /** m, at the end of each stage. */
  readonly heights: readonly number[];
  /** The unknowns of the joins, for the next search to start from. */
  readonly joinValues: readonly number[];
  /** rad, of the circles held on the ground; 0 where there are none. */
  readonly steepestCircle: number;
  /**
   * True where every leg is flown forward, final is held to the touchdown, no held circle asks for more bank than the
   * aircraft's limit or than it can fly without stalling, and final is reached above the round-out.
   */
  readonly sound: boolean;
}

/** m. The centreline is met to within this. */
const lineTolerance = 5e-3;
/** m. Final is held to within this; a crosswind stronger than the glide carries the aircraft off it. */
const heldWithin = 0.05;

/** Finds the joins and flies on to the touchdown; undefined where the legs cannot be flown in this wind. */
export function closeApproach(
  { start, stages, after }: OpenApproach,
  conditions: Conditions,
  guesses: readonly number[] = [],
): ClosedApproach | undefined {
  const flight = new Flight(conditions, 0, 'search');
  const legs: Leg[] = [];
  const joinValues: number[] = [];
  const heights: number[] = [];
  let forward = true;
  const first = [
    ...stages.flatMap(({ before, join }) => before[0] ?? join?.legs(join.guess)[0] ?? []),
    ...after,
  ][0];
  if (first) flight.begin(start, first);
  stages.forEach(({ before, join }, i) => {
    for (const leg of before) forward = flight.leg(leg) >= 0 && forward;
    legs.push(...before);
    if (join && flight.flyable) {
      const met = meetCentreline(join, flight, guesses[i] ?? join.guess);
      flight.flyable &&= met !== undefined;
      forward &&= met?.forward ?? false;
      legs.push(...(met?.legs ?? []));
      joinValues.push(met?.unknown ?? Number.NaN);
    }
    heights.push(flight.state[HEIGHT]!);
  });
  for (const leg of flight.flyable ? after : []) flight.leg(leg);
  if (!flight.flyable) return undefined;
  return {
    procedure: { start, legs: [...legs, ...after] },
    miss: flight.state[ALONG]!,
    finalHeight: heights[0]!,
    heights,
    joinValues,
    steepestCircle: flight.steepestCircle,
    sound:
      forward &&
      Math.abs(flight.state[ACROSS]!) < heldWithin &&
      bankIsSound(flight.steepestCircle, conditions) &&
      heights.every((height) => height > conditions.aircraft.roundOut.height),
  };
}

function bankIsSound(bank: number, { aircraft, polar, speeds }: Conditions): boolean {
  return bank <= aircraft.turns.limit && polar.speed > stallSpeedUnder(loadFactor(bank), speeds.stall);
}

/** Flies the join so that it ends on the centreline, and leaves the flight there. */
function meetCentreline(join: Join, flight: Flight, guess: number) {
  const before = flight.state.slice();
  let forward = true;
  let flown = Number.NaN;
  const offCentreline = (unknown: number): number => {
    flown = unknown;
    flight.state.set(before);
    forward = true;
    for (const leg of join.legs(unknown)) forward = flight.leg(leg) >= 0 && forward;
    return flight.flyable ? flight.state[ACROSS]! : Number.NaN;
  };
  const unknown = join.within
    ? rootInBracket(offCentreline, join.within, lineTolerance)
    : rootNear(offCentreline, guess, join.slope, lineTolerance);
  if (unknown === undefined) return undefined;
  if (flown !== unknown) offCentreline(unknown);
  return { unknown, legs: join.legs(unknown), forward };
}
