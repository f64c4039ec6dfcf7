import type { Phase } from '../../src/flight/terms/plan.ts';
import { sinGlide } from './polar.ts';
import {
  alongTrack,
  BANK,
  EAS,
  H,
  holdingOff,
  onCircle,
  PATH,
  PSI,
  type Rates,
  roundCircle,
  roundingOut,
  type State,
  size,
  TRACK,
  turning,
  X,
  Y,
} from './rates.ts';
import { advance } from './runge-kutta.ts';
import { g, noWind, type World } from './world.ts';

/** Called at every step of a flight that is watched. */
export type Watch = (state: State, time: number, phase: Phase) => void;

/** What is left until a leg ends: positive before it. */
type Left = (state: State) => number;

/** s. A leg that has not ended by then never does. */
const longestLeg = 1500;

/** s. The wind changes with the logarithm of height, so a step on a line goes with the height. */
const lineStep = (state: State) => Math.min(2, Math.max(0.05, state[H]! / 40));
const turnStep = () => 0.3;
const circleStep = () => 0.5;
const roundOutStep = () => 0.05;
const holdOffStep = () => 0.2;

/** An aircraft under way: legs are flown one after another by the fourth-order Runge-Kutta method. */
export class Flight {
  readonly world: World;
  readonly state: State = new Float64Array(size);
  time = 0;
  /** Why no further leg can be flown. */
  failed: string | undefined;
  /** s: no step is longer; without it, as long as smoothness allows. */
  private readonly step: number | undefined;
  private readonly watch: Watch | undefined;
  private readonly next = new Float64Array(size);
  private readonly breeze = noWind();

  constructor(world: World, step?: number, watch?: Watch) {
    this.world = world;
    this.step = step;
    this.watch = watch;
  }

  /** Wings level at the best-glide speed, unless another is given, holding a ground track. */
  begin(along: number, across: number, height: number, track: number, eas = this.world.glide.speed): this {
    this.state.fill(0);
    this.state[X] = along;
    this.state[Y] = across;
    this.state[H] = height;
    this.state[EAS] = eas;
    this.state[PATH] = Math.asin(sinGlide(this.world.glide, eas, 0));
    this.hold(track);
    return this;
  }

  /** Takes over from where another flight is. */
  goOnFrom(state: State): this {
    this.state.set(state);
    this.failed = undefined;
    return this;
  }

  /** Straight along a ground track until nothing is left, changing to a speed first. */
  line(
    phase: Phase,
    track: number,
    left: Left,
    eas = this.world.glide.speed,
    polar = this.world.glide,
  ): this {
    const { state, world } = this;
    state[BANK] = 0;
    this.hold(track);
    const fly = (rates: Rates, until: Left) => {
      if (until(state) <= 0) return;
      this.run(phase, rates, until, lineStep);
      this.settlePath(rates);
    };
    const change = Math.sign(eas - state[EAS]!) as -1 | 0 | 1;
    if (change !== 0) {
      const toSpeed = (now: State) => change * (eas - now[EAS]!);
      fly(alongTrack(world, polar, track, change), (now) => Math.min(toSpeed(now), left(now)));
      if (toSpeed(state) < 1e-7) state[EAS] = eas;
    }
    // In the last part of final the nose stays where it is.
    const above = phase === 'final' ? untilHeight(world.speedHeldDownTo) : left;
    fly(alongTrack(world, polar, track, 0), (now) => Math.min(left(now), above(now)));
    if (above(state) < 1e-6) fly(alongTrack(world, polar, track, 0, false), left);
    this.hold(track);
    return this;
  }

  /**
   * Turned to the heading that holds a track (not wrapped), by `side`, at a bank. With `rollOut` it ends wings level
   * there, and the roll-out begins as much earlier as it turns. Without, the turn ends at that heading with the bank
   * on.
   */
  turn(phase: Phase, track: number, side: 1 | -1, bank: number, rollOut = true): this {
    const { rollRate } = this.world;
    const left = (state: State) => {
      const still = side * (this.headingFor(track, state) - state[PSI]!);
      if (!rollOut) return still;
      const tas = state[EAS]! * this.world.thinness(state[H]!);
      return still + (g * Math.log(Math.cos(state[BANK]!))) / (tas * rollRate);
    };
    this.run(
      phase,
      turning(this.world, side * rollRate),
      (state) => Math.min(bank - side * state[BANK]!, left(state)),
      turnStep,
    );
    this.run(phase, turning(this.world, 0), left, turnStep);
    if (rollOut) {
      this.run(phase, turning(this.world, -side * rollRate), (state) => side * state[BANK]!, turnStep);
      this.state[BANK] = 0;
    }
    return this;
  }

  /** A circle held on the ground from one track to another (not wrapped). */
  circle(phase: Phase, radius: number, side: 1 | -1, from: number, to: number): this {
    this.state[TRACK] = from;
    const settle = (state: State) => {
      const { heading, bank } = onCircle(this.world, radius, state);
      state[PSI] = heading;
      state[BANK] = side * bank;
    };
    this.run(
      phase,
      roundCircle(this.world, radius, side),
      (state) => side * (to - state[TRACK]!),
      circleStep,
      settle,
    );
    return this;
  }

  /** Round-out at a constant load factor until level, and hold-off to the touchdown speed. */
  land(load: number): this {
    if (this.failed) return this;
    const { state, world } = this;
    this.roundOut(load);
    if (this.failed) return this;
    if (state[PATH]! > 1e-7) return this.fail('the ground is met before the round-out is level');
    state[PATH] = 0;
    const toLose = (state[EAS]! - world.touchdown) * world.thinness(0);
    if (!(toLose > 0)) return this.fail('the round-out ends below the touchdown speed');
    const perSpeed = state[H]! / toLose;
    this.run('hold-off', holdingOff(world, perSpeed), (now) => now[EAS]! - world.touchdown, holdOffStep);
    return this;
  }

  /** m: the height at which a round-out from a state is level; NaN where the ground comes first. */
  levelAfter(state: State, load: number): number {
    this.goOnFrom(state).roundOut(load);
    return this.failed || this.state[PATH]! > 1e-7 ? Number.NaN : this.state[H]!;
  }

  private roundOut(load: number): void {
    const { world } = this;
    const left = (now: State) => Math.min(now[PATH]!, now[H]! + 1e-9);
    this.run('round-out', roundingOut(world, load), left, roundOutStep);
  }

  /** The heading, not wrapped, that holds a track at a state's height and speed, wings level. */
  headingFor(track: number, state: State): number {
    const { world, breeze } = this;
    world.wind(state[H]!, breeze);
    const sin = sinGlide(world.glide, state[EAS]!, 0);
    const level = state[EAS]! * world.thinness(state[H]!) * Math.sqrt(1 - sin * sin);
    const drift = breeze.across * Math.cos(track) - breeze.along * Math.sin(track);
    return track - Math.asin(drift / level);
  }

  /** The path below the horizon that these rates fly: where a round-out begins. */
  private settlePath(rates: Rates): void {
    const { state, next } = this;
    rates(state, next);
    state[PATH] = Math.asin(Math.min(1, -next[H]! / (state[EAS]! * this.world.thinness(state[H]!))));
  }

  private hold(track: number): void {
    this.state[PSI] = this.headingFor(track, this.state);
    if (Number.isNaN(this.state[PSI]!)) this.fail('the track cannot be held');
  }

  fail(why: string): this {
    this.failed ??= why;
    return this;
  }

  /**
   * Steps on until nothing is left, with the last step cut to that. `settle` brings up to date what follows from the
   * state.
   */
  private run(
    phase: Phase,
    rates: Rates,
    left: Left,
    longest: (state: State) => number,
    settle?: (state: State) => void,
  ): void {
    if (this.failed || left(this.state) <= 0) return;
    settle?.(this.state);
    this.watch?.(this.state, this.time, phase);
    const begun = this.time;
    for (let ended = false; !ended; ) {
      let step = this.step ?? longest(this.state);
      advance(rates, this.state, step, this.next);
      const remains = left(this.next);
      if (Number.isNaN(remains) || Number.isNaN(this.next[H]!)) {
        this.fail('the glide cannot be flown in this wind');
        return;
      }
      ended = remains <= 0;
      if (ended) {
        step = this.endWithin(rates, left, step);
        advance(rates, this.state, step, this.next);
      }
      this.state.set(this.next);
      this.time += step;
      settle?.(this.state);
      this.watch?.(this.state, this.time, phase);
      if (this.time - begun > longestLeg || this.state[H]! < -3000) {
        this.fail('the leg does not end');
        return;
      }
    }
  }

  /**
   * s: how much of a step is left to the end, by false position; the weight of an end that stays for two rounds is
   * halved (Illinois).
   */
  private endWithin(rates: Rates, left: Left, step: number): number {
    let [a, fa] = [0, left(this.state)];
    let [b, fb] = [step, left(this.next)];
    let moved = 0;
    for (let i = 0; i < 80 && b - a > 1e-10 && Math.abs(fb) > 1e-10; i++) {
      const x = b - (fb * (b - a)) / (fb - fa);
      advance(rates, this.state, x, this.next);
      const fx = left(this.next);
      if (fx <= 0) {
        [b, fb] = [x, fx];
        if (moved === 1) fa /= 2;
        moved = 1;
      } else {
        [a, fa] = [x, fx];
        if (moved === -1) fb /= 2;
        moved = -1;
      }
    }
    return b;
  }
}

/** What is left to a coordinate that grows, or falls, to a value. */
export const untilAcross = (value: number, growing: 1 | -1) => (state: State) =>
  growing * (value - state[Y]!);
export const untilAlong = (value: number, growing: 1 | -1) => (state: State) => growing * (value - state[X]!);
export const untilHeight = (value: number) => (state: State) => state[H]! - value;
