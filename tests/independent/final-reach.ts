import { Flight, untilAcross, untilHeight } from './flight.ts';
import { farthestSpeed } from './polar.ts';
import { EAS, H, PSI, X, Y } from './rates.ts';
import { noWind, type World } from './world.ts';

const foot = 0.3048;
/** m. A speed other than the approach speed is held down to here. */
const backToApproach = 150 * foot;
/** rad: the most that an S-turn leaves final by. */
const widest = Math.PI / 4;
/** m of height between two values that are flown; between them the distance is a straight line, to centimetres. */
const apart = 3;

/**
 * How far final goes over the ground from wings level on the centreline at the best-glide speed at a height: at the
 * farthest, and at the least. NaN where it cannot be flown.
 */
export class FinalReach {
  readonly world: World;
  private readonly pull: number;
  private readonly known = { farthest: new Map<number, number>(), steepest: new Map<number, number>() };
  private readonly turnsBack: boolean;

  constructor(world: World, pull: number) {
    this.world = world;
    this.pull = pull;
    this.turnsBack = this.coversLessFromHigher();
  }

  /** The most that is covered from a height or from any lower one: anything up to that distance can be reached. */
  farthest = (height: number) => this.extreme('most', height, (z) => this.flownFarthest(z));
  /** The least that is covered from a height or from any higher one: final need not go past that distance. */
  steepest = (height: number) => this.extreme('least', height, (z) => this.flownSteepest(z));

  /** The same two, from values flown a few metres apart: for searches. */
  aboutFarthest = (height: number) =>
    this.extreme('most', height, (z) => this.between('farthest', z, (at) => this.flownFarthest(at)));
  aboutSteepest = (height: number) =>
    this.extreme('least', height, (z) => this.between('steepest', z, (at) => this.flownSteepest(at)));

  /** The better of the approach speed and the speed that goes farthest against the wind half way down. */
  private flownFarthest(height: number): number {
    const atApproach = this.straight(height);
    if (height <= backToApproach) return atApproach;
    return greater(atApproach, this.straight(height, this.speedAgainstWind(height)));
  }

  /** The steep approach or the approach speed, after an S-turn of whatever angle takes most, where one is complete high enough. */
  private flownSteepest(height: number): number {
    let least = this.steepStraight(height);
    for (const side of [1, -1] as const) {
      const widestSound = this.widestSTurn(height, side);
      for (const share of [1, 0.85, 0.65, 0.4]) {
        least = lesser(least, this.afterSTurn(height, side, share * widestSound));
      }
    }
    return least;
  }

  private between(which: 'farthest' | 'steepest', height: number, flown: (height: number) => number): number {
    const at = (i: number) => {
      const known = this.known[which].get(i) ?? flown(i * apart);
      this.known[which].set(i, known);
      return known;
    };
    const i = Math.floor(height / apart);
    const share = height / apart - i;
    return (1 - share) * at(i) + share * at(i + 1);
  }

  /**
   * A final that slows down from higher up, in more wind, may cover less than one from lower down. The definition
   * takes the least height that reaches, and the greatest that need not go past.
   */
  private extreme(which: 'most' | 'least', height: number, distance: (height: number) => number): number {
    let found = distance(height);
    if (!this.turnsBack) return found;
    for (const away of [5, 10, 20, 30, 45, 60, 80, 100, 130, 160, 200, 250, 300]) {
      if (which === 'least') found = lesser(found, distance(height + away));
      else if (height - away > this.world.roundOutHeight) found = greater(found, distance(height - away));
    }
    return found;
  }

  private coversLessFromHigher(): boolean {
    let [most, mostSteep] = [0, 0];
    for (let height = 20; height < 1200; height += 30) {
      const [far, steep] = [this.straight(height), this.steepStraight(height)];
      if (far < most - 1 || steep < mostSteep - 1) return true;
      [most, mostSteep] = [greater(most, far), greater(mostSteep, steep)];
    }
    return false;
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
    flight.line('final', 0, untilHeight(world.roundOutHeight), world.approach);
    return this.landed(flight);
  }

  /** As planned: with the plan's pull, or as much more as it takes to be level a foot up, where the wing allows that. */
  private landed(flight: Flight): number {
    const begun = flight.state.slice();
    const by = (load: number) => {
      flight.goOnFrom(begun).land(load);
      return flight.failed ? undefined : flight.state[X]!;
    };
    if (flight.failed) return Number.NaN;
    const planned = by(this.pull);
    if (planned !== undefined) return planned;
    let [low, high] = [this.pull, (begun[EAS]! / this.world.stall) ** 2];
    if (!(flight.levelAfter(begun, high) >= foot)) return Number.NaN;
    for (let i = 0; i < 20; i++) {
      const middle = (low + high) / 2;
      if (flight.levelAfter(begun, middle) >= foot) high = middle;
      else low = middle;
    }
    return by(high) ?? Number.NaN;
  }

  /** The steep approach, where the aircraft has one; the approach speed, where that covers less. */
  private steepStraight(height: number): number {
    const { steep } = this.world;
    const atApproach = this.straight(height);
    return steep ? lesser(atApproach, this.straight(height, steep.speed, steep)) : atApproach;
  }

  /** rad: the widest S-turn to a side that is complete at the least height of final; 0 where there is none. */
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
   * Off final by an angle, rolled without a pause the other way to as much across it, straight if need be, and on to
   * final. Undefined where it does not come back to the centreline that way.
   */
  private sTurn(height: number, side: 1 | -1, angle: number): Flight | undefined {
    const { world } = this;
    const other = side === 1 ? -1 : 1;
    const flight = new Flight(world).begin(0, 0, height, 0);
    flight.turn('final', side * angle, side, world.bank).turn('final', -side * angle, other, world.bank);
    return joinFinal(flight, -side * angle);
  }
}

/** Of two distances, either of which may not be flown. */
const lesser = (a: number, b: number) => (Number.isNaN(a) || b < a ? b : a);
const greater = (a: number, b: number) => (Number.isNaN(a) || b > a ? b : a);

/** m. The centreline is met to within this. */
const onCentreline = 0.02;

/**
 * From wings level on a track that leads to the centreline: straight, for at least no time, and turned on to final,
 * wings level on the centreline. Undefined where there is no room, or the wind does not allow it. The flight is left
 * there.
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
