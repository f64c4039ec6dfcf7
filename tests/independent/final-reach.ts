import { Flight, untilAcross, untilHeight } from './flight.ts';
import { farthestSpeed } from './polar.ts';
import { H, PSI, X, Y } from './rates.ts';
import { noWind, type World } from './world.ts';

const foot = 0.3048;
/** m. Another speed than the approach speed is held down to here. */
const backToApproach = 150 * foot;
/** rad: the most by which an S-turn leaves final. */
const widest = Math.PI / 4;
/** m of height between two values that are flown; between them the distance goes straight, to centimetres. */
const apart = 3;

/**
 * How far final goes over the ground from wings level on the centreline at the best-glide speed at a height: at the
 * farthest, and at the least. Not a number where it cannot be flown.
 */
export class FinalReach {
  readonly world: World;
  private readonly pull: number;
  private readonly known = { farthest: new Map<number, number>(), steepest: new Map<number, number>() };

  constructor(world: World, pull: number) {
    this.world = world;
    this.pull = pull;
  }

  /** The better of the approach speed, and the speed that goes farthest against the wind half way down. */
  farthest(height: number): number {
    const atApproach = this.straight(height);
    if (height <= backToApproach) return atApproach;
    const best = this.straight(height, this.speedAgainstWind(height));
    return Number.isNaN(best) ? atApproach : Number.isNaN(atApproach) ? best : Math.max(best, atApproach);
  }

  /** The steep approach, after an S-turn of whatever angle takes most, where one is complete high enough. */
  steepest(height: number): number {
    let least = this.steepStraight(height);
    for (const side of [1, -1] as const) {
      const widestSound = this.widestSTurn(height, side);
      for (const share of [1, 0.85, 0.65, 0.4]) {
        const distance = this.afterSTurn(height, side, share * widestSound);
        if (distance < least) least = distance;
      }
    }
    return least;
  }

  /** The same two, from values flown a few metres apart: for searches. */
  aboutFarthest = (height: number) => this.between('farthest', height);
  aboutSteepest = (height: number) => this.between('steepest', height);

  private between(which: 'farthest' | 'steepest', height: number): number {
    const at = (i: number) => {
      const known = this.known[which].get(i);
      if (known !== undefined) return known;
      const flown = this[which](i * apart);
      this.known[which].set(i, flown);
      return flown;
    };
    const i = Math.floor(height / apart);
    const share = height / apart - i;
    return (1 - share) * at(i) + share * at(i + 1);
  }

  private speedAgainstWind(height: number): number {
    const { world } = this;
    const wind = noWind();
    world.wind(height / 2, wind);
    const best = farthestSpeed(world.glide, -wind.along, world.thinness(height / 2));
    return Math.max(best, 1.3 * world.stall);
  }

  private straight(height: number, eas?: number, polar = this.world.glide): number {
    const { world } = this;
    const flight = new Flight(world).begin(0, 0, height, 0);
    if (eas !== undefined) flight.line('final', 0, untilHeight(backToApproach), eas, polar);
    flight.line('final', 0, untilHeight(world.roundOutHeight), world.approach).land(this.pull);
    return flight.failed ? Number.NaN : flight.state[X]!;
  }

  private steepStraight(height: number): number {
    const { steep } = this.world;
    return steep ? this.straight(height, steep.speed, steep) : this.straight(height);
  }

  /** rad: the widest S-turn to a side that is complete at the least height of final; nought where none is. */
  private widestSTurn(height: number, side: 1 | -1): number {
    const sound = (angle: number) => {
      const flight = this.sTurn(height, side, angle);
      return flight !== undefined && flight.state[H]! >= this.world.leastFinal;
    };
    if (height <= this.world.leastFinal) return 0;
    if (sound(widest)) return widest;
    let [low, high] = [0, widest];
    for (let i = 0; i < 9; i++) {
      const middle = (low + high) / 2;
      if (sound(middle)) low = middle;
      else high = middle;
    }
    return low;
  }

  private afterSTurn(height: number, side: 1 | -1, angle: number): number {
    if (angle === 0) return Number.NaN;
    const flight = this.sTurn(height, side, angle);
    if (!flight || flight.state[H]! < this.world.leastFinal) return Number.NaN;
    return flight.state[X]! + this.steepStraight(flight.state[H]!);
  }

  /**
   * Off final by an angle, rolled without a pause the other way to as much across it, straight if need be, and on to final.
   * Undefined where it does not come back to the centreline so.
   */
  private sTurn(height: number, side: 1 | -1, angle: number): Flight | undefined {
    const { world } = this;
    const other = side === 1 ? -1 : 1;
    const flight = new Flight(world).begin(0, 0, height, 0);
    flight.turn('final', side * angle, side, world.bank).turn('final', -side * angle, other, world.bank);
    return joinFinal(flight, -side * angle);
  }
}

/** m. The centreline is met this nearly. */
const onCentreline = 0.02;

/**
 * From wings level on a track that leads to the centreline: straight, for no less than nothing, and turned on to final, wings
 * level on the centreline. Undefined where there is no room, or the wind does not allow it. The flight is left there.
 */
export function joinFinal(flight: Flight, track: number): Flight | undefined {
  if (flight.failed) return undefined;
  const begun = flight.state.slice();
  const growing = Math.sin(track) > 0 ? 1 : -1;
  let turnAt = begun[Y]!;
  for (let round = 0; round < 12; round++) {
    flight.goOnFrom(begun);
    if (growing * (turnAt - begun[Y]!) < -1e-9) return undefined;
    if (round > 0) flight.line('base', track, untilAcross(turnAt, growing));
    turnStraight(flight, 0);
    if (flight.failed) return undefined;
    const off = flight.state[Y]!;
    if (Math.abs(off) < onCentreline) return flight;
    turnAt -= off;
  }
  return undefined;
}

/** Turned, the shorter way, to the heading that holds a track (not wrapped), at the planned bank. */
export function turnStraight(flight: Flight, track: number): void {
  if (flight.failed) return;
  const needed = flight.headingFor(track, flight.state) - flight.state[PSI]!;
  if (Number.isNaN(needed)) flight.fail('the track cannot be held');
  else if (Math.abs(needed) > 1e-6) flight.turn('final-turn', track, needed > 0 ? 1 : -1, flight.world.bank);
}
