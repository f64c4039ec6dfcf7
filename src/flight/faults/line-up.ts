import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { ACROSS, ALONG, BANK, EAS, HEIGHT } from '../flying/motions.ts';
import type { LineLeg } from '../flying/procedure.ts';
import { turnOnTo } from '../flying/turn-on-to.ts';
import { angleBetween } from '../numerics/angle.ts';
import { rootInBracket, rootNear } from '../numerics/root.ts';
import { eighth } from '../plan/final-band.ts';
import type { TrackSample } from '../terms/plan.ts';
import { easeBank } from './handling.ts';

/** Wings level on the centreline, m and m/s. */
export interface LinedUp {
  readonly along: number;
  readonly height: number;
  readonly eas: number;
}

/** m. The centreline is met this nearly. */
const tolerance = 5e-3;

/**
 * Back to the centreline with a shallow S from a point in the turn to final or after it: never more than `bank`, on to a
 * track that leads to the centreline at 45 degrees at most, straight on where that takes it, and on to the centreline.
 * Undefined where it does not come there. The ground is ignored.
 */
export function lineUp(
  point: TrackSample,
  bank: number,
  runwayHeading: number,
  conditions: Conditions,
): LinedUp | undefined {
  const flight = new Flight(conditions, 0, 'search');
  const heading = angleBetween(0, point.heading - runwayHeading);
  const { along, across, height, eas } = point;
  flight.begin({ along, across, height, eas, heading }, line(0, across, 1, eas));
  flight.state[BANK] = point.bank;
  const before = flight.state.slice();
  const turn = (track: number) => {
    const leg = turnOnTo(track, undefined, bank, flight);
    flight.leg(easeBank(leg, bank));
    flight.leg(leg);
  };
  /** Turned on to a track, straight on until so far across the runway, on to final. */
  const off = (track: number, until?: number): number => {
    flight.state.set(before);
    flight.flyable = true;
    turn(track);
    if (until !== undefined) flight.leg(line(track, until, track > 0 ? 1 : -1, eas));
    turn(0);
    return flight.flyable ? flight.state[ACROSS]! : Number.NaN;
  };
  const [left, right] = [off(-eighth), off(eighth)];
  const met =
    left <= 0 && right >= 0
      ? rootInBracket((track) => off(track), [-eighth, eighth], tolerance)
      : farther(off, left > 0 ? -eighth : eighth, left > 0 ? left : right);
  if (met === undefined || Math.abs(flight.state[ACROSS]!) > 10 * tolerance) return undefined;
  const { state } = flight;
  return { along: state[ALONG]!, height: state[HEIGHT]!, eas: state[EAS]! };
}

/** So far off that it takes a straight way. */
function farther(
  off: (track: number, until: number) => number,
  track: number,
  missed: number,
): number | undefined {
  const turned = -missed;
  return Number.isFinite(missed)
    ? rootNear((until) => off(track, until), turned / 2, 1, tolerance)
    : undefined;
}

function line(track: number, until: number, growing: 1 | -1, eas: number): LineLeg {
  return { kind: 'line', phase: 'final', track, until: { reaches: 'across', value: until, growing }, eas };
}
