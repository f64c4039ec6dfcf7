import { joinFinal, turnStraight } from './final-reach.ts';
import { Flight, untilAlong } from './flight.ts';
import { BANK, H, X, Y } from './rates.ts';
import type { World } from './world.ts';

/*
 * The paths that the definition of the gates allows, from a key to where they are complete on final, wings level. Each is
 * undefined where it cannot be flown.
 */

export interface Place {
  readonly along: number;
  readonly across: number;
}

/** Where a path is complete on final: how far before the spot, and how high. */
export interface Complete {
  readonly before: number;
  readonly height: number;
}

/** rad: the banks of a single turn. */
const shallowest = (5 * Math.PI) / 180;
const steepest = (45 * Math.PI) / 180;

/** m: a height at a key from which final may be complete at about the least height. */
export function guessFrom({ leastFinal, glide }: World, { along, across }: Place, past: number): number {
  return leastFinal + (past + Math.abs(across) + Math.max(0, -along) / 4) / glide.ratio;
}

function complete(flight: Flight | undefined): Complete | undefined {
  return flight && !flight.failed ? { before: -flight.state[X]!, height: flight.state[H]! } : undefined;
}

/** Turned in from base leg at once by an angle (out where it is negative), straight, and on to final. */
export function fromBase(
  world: World,
  { along, across }: Place,
  height: number,
  turn: number,
): Complete | undefined {
  const base = (-world.side * Math.PI) / 2;
  const flight = new Flight(world).begin(along, across, height, base);
  const track = base + world.side * turn;
  turnStraight(flight, track);
  return complete(joinFinal(flight, track));
}

/** Straight for `past`, turned on to base leg and in by an angle, straight, and on to final. */
export function fromDownwind(
  world: World,
  { along, across }: Place,
  height: number,
  past: number,
  turn: number,
): Complete | undefined {
  const { side } = world;
  const downwind = -side * Math.PI;
  const flight = new Flight(world).begin(along, across, height, downwind);
  flight.line('downwind', downwind, untilAlong(along - past, -1));
  const track = downwind / 2 + side * turn;
  turnStraight(flight, track);
  return complete(joinFinal(flight, track));
}

/** Straight for `past`, and one turn on to final, at the bank that ends on the centreline. */
export function inOneTurn(
  world: World,
  { along, across }: Place,
  height: number,
  past: number,
): Complete | undefined {
  const { side } = world;
  const downwind = -side * Math.PI;
  const flight = new Flight(world).begin(along, across, height, downwind);
  flight.line('downwind', downwind, untilAlong(along - past, -1));
  if (flight.failed) return undefined;
  const begun = flight.state.slice();
  const overshoot = (bank: number) => {
    flight.goOnFrom(begun).turn('final-turn', 0, side, bank);
    return flight.failed ? Number.NaN : -side * flight.state[Y]!;
  };
  // Two turns at the planned bank have no room, so the bank is never less than half of it.
  let [low, high] = [Math.max(shallowest, world.bank / 2), Math.min(steepest, world.bankLimit)];
  if (!(overshoot(low) >= 0 && overshoot(high) <= 0)) return undefined;
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (overshoot(middle) > 0) low = middle;
    else high = middle;
  }
  overshoot(high);
  return flight.state[BANK] === 0 ? complete(flight) : undefined;
}
