import { angleBetween } from '../numerics/angle.ts';
import { cosine, sine } from '../numerics/steady-math.ts';
import type { Conditions } from './conditions.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEADING, HEIGHT } from './motions.ts';
import type { LineLeg, Side } from './procedure.ts';
import { type GroundPoint, type Position, takeUp } from './reach.ts';
import { flyOnTo } from './turn-on-to.ts';

/** A point to be flown over on a given track: a key position, or a point of final. */
export interface Gateway extends GroundPoint {
  /** rad from the landing direction. */
  readonly track: number;
}

/** Tries are limited; a way that has not settled by then does not exist. */
const mostTries = 40;
/** m: how nearly the gateway is met. */
const tolerance = 0.5;

/**
 * Height, m above the spot, at which the glide passes a gateway on its track: a turn on to the straight way there,
 * the straight way, a turn on to the track. The ground is ignored, so a negative height says by how much the gateway
 * is missed. The best of the turns to either side; undefined where none leads there.
 */
export function arrivalHeight(
  position: Position,
  gateway: Gateway,
  bank: number,
  conditions: Conditions,
): number | undefined {
  const sides: readonly Side[] = [1, -1];
  const heights = sides.flatMap((first) =>
    sides.map((last) => arriveBy([first, last], { position, gateway, bank, conditions })),
  );
  const found = heights.filter((height) => height !== undefined);
  return found.length > 0 ? Math.max(...found) : undefined;
}

/** From where to where, and how. */
interface Arrival {
  readonly position: Position;
  readonly gateway: Gateway;
  readonly bank: number;
  readonly conditions: Conditions;
}

/** The straight way's track is found by aiming again at what the last try missed. */
function arriveBy(
  [first, last]: readonly [first: Side, last: Side],
  { position, gateway, bank, conditions }: Arrival,
): number | undefined {
  let aim: GroundPoint = gateway;
  for (let tries = 0; tries < mostTries; tries++) {
    const flight = startOver(position, conditions);
    const track = trackTo(aim, flight, bank, first);
    if (track === undefined) return undefined;
    const toAim: LineLeg = { ...lineTo(aim, track, flight), eas: conditions.polar.speed };
    if (flight.leg(toAim) < 0) return undefined;
    flyOnTo(gateway.track, last, bank, flight);
    const off = {
      along: gateway.along - flight.state[ALONG]!,
      across: gateway.across - flight.state[ACROSS]!,
    };
    if (!flight.flyable) return undefined;
    if (Math.hypot(off.along, off.across) < tolerance) return flight.state[HEIGHT]!;
    aim = { along: aim.along + off.along, across: aim.across + off.across };
  }
  return undefined;
}

function startOver(position: Position, conditions: Conditions): Flight {
  const flight = new Flight(conditions, 0, 'search');
  flight.state.set(takeUp(position, conditions).state);
  return flight;
}

/** Turns the flight on to the track that leads from the end of the turn to the aim; undefined where it does not settle. */
function trackTo(aim: GroundPoint, flight: Flight, bank: number, side: Side): number | undefined {
  const before = Float64Array.from(flight.state);
  let track = Math.atan2(aim.across - before[ACROSS]!, aim.along - before[ALONG]!);
  for (let tries = 0; tries < mostTries; tries++) {
    flight.state.set(before);
    flyOnTo(track, side, bank, flight);
    const now = Math.atan2(aim.across - flight.state[ACROSS]!, aim.along - flight.state[ALONG]!);
    if (Math.abs(angleBetween(track, now)) < 1e-6) return track;
    track = now;
  }
  return undefined;
}

/** A line on a track that ends abeam an aim, measured along whichever axis it runs more nearly. */
function lineTo(aim: GroundPoint, track: number, flight: Flight): Omit<LineLeg, 'eas'> {
  const unwrapped = flight.state[HEADING]! + angleBetween(flight.state[HEADING]!, track);
  const byAlong = Math.abs(cosine(track)) > Math.abs(sine(track));
  const growing = (byAlong ? cosine(track) : sine(track)) >= 0 ? 1 : -1;
  return {
    kind: 'line',
    phase: 'base',
    track: unwrapped,
    until: byAlong
      ? { reaches: 'along', value: aim.along, growing }
      : { reaches: 'across', value: aim.across, growing },
  };
}
