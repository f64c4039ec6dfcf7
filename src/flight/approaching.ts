import type { Conditions } from './conditions.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEIGHT } from './motions.ts';
import type { Leg, Procedure, Start } from './procedure.ts';
import { rootInBracket, rootNear } from './root.ts';
import { loadFactor, stallSpeedUnder } from './turns.ts';

/**
 * An approach with one thing left open: how it comes onto its centreline. `join` makes the legs that end wings level on
 * final from one number (where the turn to final starts, or the bank of a single turn), and that number is found so
 * that they end on the centreline.
 */
export interface Approaching {
  readonly start: Start;
  /** Flown before the join. */
  readonly before: readonly Leg[];
  /** Undefined where the legs before it end on the centreline by themselves. */
  readonly join?: Join | undefined;
  /** From wings level on final to the touchdown. */
  readonly after: readonly Leg[];
}

export interface Join {
  readonly legs: (unknown: number) => readonly Leg[];
  /** A likely value; the answer is searched from here. */
  readonly guess: number;
  /** By how much the place across the runway changes with the unknown, about. */
  readonly slope: number;
  /** Where given, the unknown lies in here and the search keeps to it. */
  readonly within?: readonly [low: number, high: number] | undefined;
}

/** An approach brought onto its centreline and flown to the touchdown, the ground ignored before that. */
export interface Approached {
  readonly procedure: Procedure;
  /** m, the touchdown past the spot; negative for short. */
  readonly miss: number;
  /** m, on final with the wings level. */
  readonly finalHeight: number;
  /** The unknown of the join, for the next search to start from. */
  readonly joined: number | undefined;
  /** rad, of the circles held on the ground; 0 where there are none. */
  readonly steepestCircle: number;
  /**
   * True where every leg is flown forward, no held circle asks for more bank than the aircraft's limit or than it can
   * fly without stalling, and final is reached above the round-out.
   */
  readonly sound: boolean;
}

/** m. The centreline is met this nearly. */
const lineTolerance = 1e-5;

/** Finds the join and flies on to the touchdown; undefined where the legs cannot be flown in this wind. */
export function approach(
  approaching: Approaching,
  conditions: Conditions,
  guess?: number,
): Approached | undefined {
  const { start, before, join, after } = approaching;
  const flight = new Flight(conditions, 0, 'search');
  const first = before[0] ?? join?.legs(join.guess)[0];
  if (!first) return undefined;
  flight.begin(start, first);
  let forward = true;
  for (const leg of before) forward = flight.leg(leg) >= 0 && forward;
  const joined = join && meetCentreline(join, flight, guess ?? join.guess);
  if (join && !joined) return undefined;
  const finalHeight = flight.state[HEIGHT]!;
  for (const leg of after) flight.leg(leg);
  if (!flight.flyable) return undefined;
  return {
    procedure: { start, legs: [...before, ...(joined?.legs ?? []), ...after] },
    miss: flight.state[ALONG]!,
    finalHeight,
    joined: joined?.unknown,
    steepestCircle: flight.steepestCircle,
    sound:
      forward &&
      (joined?.forward ?? true) &&
      bankIsSound(flight.steepestCircle, conditions) &&
      finalHeight > conditions.aircraft.roundOut.height,
  };
}

function bankIsSound(bank: number, { aircraft, polar, speeds }: Conditions): boolean {
  return bank <= aircraft.turns.limit && polar.speed > stallSpeedUnder(loadFactor(bank), speeds.stall);
}

/** Flies the join so that it ends on the centreline, and leaves the flight there. */
function meetCentreline(join: Join, flight: Flight, guess: number) {
  const before = Float64Array.from(flight.state);
  let forward = true;
  const offCentreline = (unknown: number): number => {
    flight.state.set(before);
    forward = true;
    for (const leg of join.legs(unknown)) forward = flight.leg(leg) >= 0 && forward;
    return flight.flyable ? flight.state[ACROSS]! : Number.NaN;
  };
  const unknown = join.within
    ? rootInBracket(offCentreline, join.within, lineTolerance)
    : rootNear(offCentreline, guess, join.slope, lineTolerance);
  if (unknown === undefined) return undefined;
  offCentreline(unknown);
  return { unknown, legs: join.legs(unknown), forward };
}
