import { angleBetween } from '../numerics/angle.ts';
import type { Conditions } from './conditions.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEADING } from './motions.ts';
import type { LineLeg } from './procedure.ts';
import { flyOnTo } from './turn-on-to.ts';

/** Where an engine stops: m in the spot frame, height above the spot, heading in rad from the landing direction. */
export interface Position {
  readonly along: number;
  readonly across: number;
  readonly height: number;
  readonly heading: number;
}

/** A point on the ground, m in the spot frame. */
export interface GroundPoint {
  readonly along: number;
  readonly across: number;
}

/** rad. */
const bearingStep = (5 * Math.PI) / 180;

/**
 * The ground that the glide reaches from a position in this wind: turned the shorter way, at the planned bank, on to
 * each track, and straight on to the ground at the best-glide speed. The outline is a ring of points in the order of
 * their bearing, first and last the same.
 */
export function reachFrom(position: Position, bank: number, conditions: Conditions): GroundPoint[] {
  const ring: GroundPoint[] = [];
  for (let bearing = 0; bearing < 2 * Math.PI - 1e-9; bearing += bearingStep) {
    const flight = glideOut(position, bearing, bank, conditions);
    ring.push({ along: flight.state[ALONG]!, across: flight.state[ACROSS]! });
  }
  return [...ring, ring[0]!];
}

/** Turned on to a track, and straight on to the ground. */
function glideOut(position: Position, track: number, bank: number, conditions: Conditions): Flight {
  const flight = takeUp(position, conditions);
  flyOnTo(track, undefined, bank, flight);
  const out: LineLeg = {
    kind: 'line',
    phase: 'final',
    track: flight.state[HEADING]! + angleBetween(flight.state[HEADING]!, track),
    until: { reaches: 'height', value: 0, growing: -1 },
    eas: conditions.polar.speed,
  };
  flight.leg(out);
  return flight;
}

/** A flight that begins at a position, wings level, at the best-glide speed, and meets the ground where the ground is. */
export function takeUp({ along, across, height, heading }: Position, conditions: Conditions): Flight {
  const flight = new Flight(conditions, 0, 'honest');
  const onward: LineLeg = {
    kind: 'line',
    phase: 'base',
    track: heading,
    until: { lasts: 0 },
    eas: conditions.polar.speed,
  };
  flight.begin({ along, across, height, eas: conditions.polar.speed, heading }, onward);
  return flight;
}
