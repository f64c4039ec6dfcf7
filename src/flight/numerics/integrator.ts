/**
 * Motion between two events, smooth throughout, so that a high-order step keeps its order. What changes abruptly
 * (a bank reached, a turn begun) ends one motion and begins the next.
 */
export interface Motion {
  /**
   * s; longer steps than this would cost more than a millimetre at the touchdown. A function where it depends on the
   * state.
   */
  readonly longestStep: number | ((state: State) => number);
  /** Places in the state that change; left out, all of them. The rates of the others are ignored. */
  readonly moves?: readonly number[];
  /** Left out, `mostSteps`: a motion that has not come to its end by then has none. */
  readonly mostSteps?: number;
  /** Rates of change of the state. */
  derivative(state: State, rates: State): void;
  /** What is left until the motion ends: positive before, 0 at the end, negative after. */
  remaining(state: State): number;
  /** Brings up to date what follows from the rest of the state (a heading held against drift). */
  settle?(state: State): void;
}

export type State = Float64Array;

/** No leg of an approach takes this many steps: it bounds every run, whatever the input. */
const mostSteps = 4000;

/** s: how far ahead a motion looks to see how fast its event approaches. */
const glance = 1e-3;

/** How far a motion went. */
export interface Advance {
  /** s; negative where the motion had to be run backward to its end. */
  readonly duration: number;
  /** False where its end did not come within the bound, or its rates were NaN. */
  readonly ended: boolean;
}

/** A step tried, and the longest allowed, s; what was left until the motion ends at its start, and after the step tried. */
interface TriedStep {
  readonly tried: number;
  readonly longest: number;
  readonly atStart: number;
  readonly atTried: number;
}

/**
 * A classical fourth-order Runge-Kutta integrator (Kutta, 1901) of states of one size, with its work space. The last
 * step of a motion is cut so that it ends on the event, by a bracketed secant on the length of the step, so that the
 * event is met with the accuracy of the method and not of an interpolant.
 */
export class Integrator {
  private readonly step: number;
  private readonly k1: State;
  private readonly k2: State;
  private readonly k3: State;
  private readonly k4: State;
  private readonly mid: State;
  private readonly trial: State;
  private readonly all: readonly number[];

  /** `step` in s is the longest step taken; motions may ask for shorter ones. */
  constructor(size: number, step: number = Number.POSITIVE_INFINITY) {
    this.step = step;
    this.k1 = new Float64Array(size);
    this.k2 = new Float64Array(size);
    this.k3 = new Float64Array(size);
    this.k4 = new Float64Array(size);
    this.mid = new Float64Array(size);
    this.trial = new Float64Array(size);
    this.all = Array.from({ length: size }, (_, i) => i);
  }

  /**
   * Runs a motion to its end, changing `state`; `onStep` sees the end of each step. Where the end has already passed,
   * the motion is run backward to it if `backward` allows that, and not at all otherwise.
   */
  run(motion: Motion, state: State, backward: boolean, onStep?: (elapsed: number) => void): Advance {
    let left = motion.remaining(state);
    if (left === 0 || (left < 0 && !backward)) return { duration: 0, ended: true };
    const direction = left > 0 ? 1 : -1;
    const moves = motion.moves ?? this.all;
    this.mid.set(state);
    this.trial.set(state);
    let elapsed = 0;
    let pace = Number.NaN;
    const most = this.step < Number.POSITIVE_INFINITY ? mostSteps : (motion.mostSteps ?? mostSteps);
    for (let count = 0; count < most; count++) {
      const asked = typeof motion.longestStep === 'number' ? motion.longestStep : motion.longestStep(state);
      const longest = direction * Math.min(this.step, asked);
      motion.derivative(state, this.k1);
      // The last step is aimed at the event: little is left over after it.
      if (elapsed === 0) pace = this.paceAtStart(motion, state, left, moves);
      const aimed = left / pace;
      const length = aimed * direction > 0 && aimed / longest < 1 ? aimed : longest;
      this.take(motion, state, length, moves);
      let then = motion.remaining(this.trial);
      if (length !== longest || then * direction <= 0) {
        const cut = this.cutToEvent(
          motion,
          state,
          { tried: length, longest, atStart: left, atTried: then },
          moves,
        );
        if (cut !== undefined) {
          this.keepTrial(state, moves);
          motion.settle?.(state);
          elapsed += cut;
          onStep?.(elapsed);
          return { duration: elapsed, ended: true };
        }
        this.take(motion, state, length, moves);
        then = motion.remaining(this.trial);
      }
      // A motion that cannot be flown on from here: the state stays where it last could.
      if (Number.isNaN(then)) break;
      this.keepTrial(state, moves);
      pace = (left - then) / length;
      left = then;
      elapsed += length;
      if (onStep) {
        motion.settle?.(state);
        onStep(elapsed);
      }
    }
    motion.settle?.(state);
    return { duration: elapsed, ended: false };
  }

  /** How much of what is left goes in a second at the start of a motion, with the rates there in `k1`. */
  private paceAtStart(motion: Motion, state: State, left: number, moves: readonly number[]): number {
    for (const i of moves) this.mid[i] = state[i]! + glance * this.k1[i]!;
    return (left - motion.remaining(this.mid)) / glance;
  }

  /**
   * Leaves in `trial` the step that ends on the event, and returns its length: secants from a step that was tried,
   * kept inside the bracket as soon as there is one. Undefined where the event does not come within the longest step.
   */
  private cutToEvent(
    motion: Motion,
    state: State,
    { tried, longest, atStart, atTried }: TriedStep,
    moves: readonly number[],
  ): number | undefined {
    let [x0, f0, x1, f1] = [0, atStart, tried, atTried];
    let bracketed = atStart * atTried <= 0;
    let [near, far] = bracketed ? [0, tried] : [tried, longest];
    for (let tries = 0; tries < 60; tries++) {
      if (Math.abs(f1) < 1e-7) return x1;
      let next = x1 - (f1 * (x1 - x0)) / (f1 - f0);
      if (!((next - near) * (next - far) < 0)) {
        if (!bracketed) return undefined;
        next = (near + far) / 2;
        if (next === near || next === far) return x1;
      }
      [x0, f0] = [x1, f1];
      x1 = next;
      this.take(motion, state, x1, moves);
      f1 = motion.remaining(this.trial);
      if (f1 * atStart > 0) near = x1;
      else [far, bracketed] = [x1, true];
    }
    return undefined;
  }

  private keepTrial(state: State, moves: readonly number[]): void {
    for (const i of moves) state[i] = this.trial[i]!;
  }

  /** Leaves in `trial` a step of h s, with the rates at its start in `k1`. */
  private take(motion: Motion, state: State, h: number, moves: readonly number[]): void {
    const { k1, k2, k3, k4, mid, trial } = this;
    const count = moves.length;
    const half = 0.5 * h;
    const sixth = h / 6;
    // Counted loops: they run some fifty times for each second of flight, and are half of its cost.
    for (let m = 0; m < count; m++) mid[moves[m]!] = state[moves[m]!]! + half * k1[moves[m]!]!;
    motion.derivative(mid, k2);
    for (let m = 0; m < count; m++) mid[moves[m]!] = state[moves[m]!]! + half * k2[moves[m]!]!;
    motion.derivative(mid, k3);
    for (let m = 0; m < count; m++) mid[moves[m]!] = state[moves[m]!]! + h * k3[moves[m]!]!;
    motion.derivative(mid, k4);
    for (let m = 0; m < count; m++) {
      const i = moves[m]!;
      trial[i] = state[i]! + sixth * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
    }
  }
}
