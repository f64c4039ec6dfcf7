import { crab, stillAir } from '../air/wind.ts';
import { angleBetween } from '../numerics/angle.ts';
import type { Flight } from './fly.ts';
import { EAS, HEADING, HEIGHT } from './motions.ts';
import type { Side, TurnLeg } from './procedure.ts';

/** rad. A turn the long way round where the short way is less than this is no turn at all. */
const noTurn = 0.2;

/** rad from one direction round to another by a side; a little the other way rather than all the way round. */
export function round(side: Side, from: number, to: number): number {
  const turn = side * angleBetween(from, to);
  return turn >= -noTurn ? turn : turn + 2 * Math.PI;
}

/** The turn by a side (the shorter one where none is given) from where the nose is to the heading that holds a track. */
export function turnOnTo(track: number, side: Side | undefined, bank: number, flight: Flight): TurnLeg {
  return turning(track, side, bank, flight).leg;
}

/** Turns a flight on to the heading that holds a track; leaves it alone where that is held already. */
export function flyOnTo(track: number, side: Side | undefined, bank: number, flight: Flight): void {
  const { leg, angle } = turning(track, side, bank, flight);
  if (Math.abs(angle) > 1e-9) flight.leg(leg);
}

function turning(track: number, side: Side | undefined, bank: number, { state, conditions }: Flight) {
  const now = state[HEADING]!;
  const wind = stillAir();
  conditions.wind(state[HEIGHT]!, wind);
  const laidOff = crab(track, state[EAS]! * conditions.tasOverEas(state[HEIGHT]!), wind);
  const nose = track + laidOff;
  const by = side ?? (angleBetween(now, nose) >= 0 ? 1 : -1);
  const angle = round(by, now, nose);
  const leg: TurnLeg = {
    kind: 'turn',
    phase: 'base-turn',
    track: now + by * angle - laidOff,
    side: angle >= 0 ? by : by === 1 ? -1 : 1,
    bank,
    rollOut: true,
  };
  return { leg, angle };
}
