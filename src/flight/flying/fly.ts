import { stillAir } from '../air/wind.ts';
import { Integrator, type Motion, type State } from '../numerics/integrator.ts';
import type { Phase, TrackSample } from '../terms/plan.ts';
import type { Conditions } from './conditions.ts';
import {
  ACROSS,
  ALONG,
  BANK,
  EAS,
  glideAlongLine,
  glideRoundCircle,
  glidingTurn,
  HEADING,
  HEIGHT,
  headingBeforeRollOut,
  holdOff,
  type Medium,
  PATH,
  roundOut,
  speedHeldDownTo,
  stateSize,
  TIME,
  TRACK,
} from './motions.ts';
import type { CircleLeg, LandingLeg, Leg, LineLeg, Procedure, Start, TurnLeg, Until } from './procedure.ts';
import { firmerPull } from './round-out-pull.ts';

/**
 * `honest`: a flight ends where it meets the ground. `search`: the ground is ignored and a leg whose end has already
 * passed is flown backward to it, so that what the solver sees is smooth on both sides of the answer.
 */
export type Mode = 'honest' | 'search';

/** m. Nearer to the ground than this counts as on it. */
const groundContact = 1e-6;

/** s. Samples of a track lie at most this far apart. */
const sampleSpacing = 0.5;

/** Work space that all flights share, since they are flown one at a time. */
const free = new Integrator(stateSize);
const sampled = new Integrator(stateSize, sampleSpacing);

/**
 * The end of an approach as a search last flew it in these conditions: what follows is the same whenever it starts
 * the same.
 */
interface Remembered<Of extends Leg> {
  readonly leg: Of;
  readonly height: number;
  readonly eas: number;
  /** rad; a landing follows from it. */
  readonly path: number;
  /** From there to the leg's end: m, m and s. */
  readonly along: number;
  readonly across: number;
  readonly time: number;
  /** m, m/s. */
  readonly endHeight: number;
  readonly endEas: number;
}

const glides = new WeakMap<Conditions, Remembered<LineLeg>>();
const landings = new WeakMap<Conditions, Remembered<LandingLeg>>();

/** s. A leg whose end comes later than this is not a leg. */
const longestLeg = 1500;

/** That a flight keeps its track. */
export interface KeptTrack {
  /** s: bounds the integrator's steps, and with them what lies between two samples. */
  readonly step?: number | undefined;
}

/** A flight under way: its state, its clock, and its track where that is kept. */
export class Flight {
  readonly conditions: Conditions;
  readonly state: State = new Float64Array(stateSize);
  /** False once a leg has not come to its end: the wind is stronger than the glide. */
  flyable = true;
  /** rad: the steepest bank that a held ground circle needed; turns have the bank that they name. */
  steepestCircle = 0;
  readonly track: TrackSample[] = [];
  private readonly runwayHeading: number;
  private readonly mode: Mode;
  private readonly integrator: Integrator;
  private readonly keepTrack: boolean;
  private readonly drift = stillAir();

  constructor(conditions: Conditions, runwayHeading: number, mode: Mode, kept?: KeptTrack) {
    this.conditions = conditions;
    this.runwayHeading = runwayHeading;
    this.mode = mode;
    this.keepTrack = kept !== undefined;
    const { step } = kept ?? {};
    this.integrator = step === undefined ? (kept ? sampled : free) : new Integrator(stateSize, step);
  }

  /** Begins at the start, wings level, holding the track of the first leg unless the start names a heading. */
  begin(start: Start, first: Leg): void {
    const { state } = this;
    state.fill(0);
    state[ALONG] = start.along;
    state[ACROSS] = start.across;
    state[HEIGHT] = start.height;
    state[EAS] = start.eas;
    const speed = start.height > speedHeldDownTo ? 'held' : 'left';
    const motion = glideAlongLine(this.conditions, trackOf(first), () => 0, speed);
    motion.settle?.(state);
    if (start.heading !== undefined) state[HEADING] = start.heading;
    if (this.keepTrack && first.kind !== 'landing') this.sample(first.phase, motion);
  }

  /** s since the start. */
  get time(): number {
    return this.state[TIME]!;
  }

  get onGround(): boolean {
    return this.mode === 'honest' && this.state[HEIGHT]! <= groundContact;
  }

  /** Flies one leg from where the flight is. Does nothing on the ground. Returns its duration in s. */
  leg(leg: Leg): number {
    const before = this.time;
    if (!this.onGround) {
      if (leg.kind === 'line') this.line(leg);
      else if (leg.kind === 'turn') this.turn(leg);
      else if (leg.kind === 'circle') this.circle(leg);
      else if (leg.kind === 'motion')
        this.run(leg.from(this.conditions, this.state), leg.phase, this.mode !== 'honest');
      else this.landing(leg);
    }
    return this.time - before;
  }

  private line(leg: LineLeg): void {
    const until = leftOf(leg.until, this.state);
    const medium =
      leg.steep && this.conditions.steep
        ? { ...this.conditions, polar: this.conditions.steep }
        : this.conditions;
    const gap = leg.eas - this.state[EAS]!;
    const backward = until(this.state) < 0;
    if (gap !== 0 && !backward) {
      const change = gap > 0 ? 1 : -1;
      const reached = (state: State) => Math.min(change * (leg.eas - state[EAS]!), until(state));
      this.run(glideAlongLine(medium, leg.track, reached, gap > 0 ? 'faster' : 'slower'), leg.phase);
      if (Math.abs(leg.eas - this.state[EAS]!) < 1e-9) this.state[EAS] = leg.eas;
    }
    if (this.mode === 'honest') {
      this.steady(medium, leg, until);
      return;
    }
    const kept = endsAtHeight(leg) && (!hasLast(leg) || this.state[HEIGHT]! > speedHeldDownTo);
    const known = kept ? glides.get(this.conditions) : undefined;
    if (known && sameGlide(known.leg, leg) && known.eas === this.state[EAS]) {
      this.run(
        glideAlongLine(medium, leg.track, (state) => state[HEIGHT]! - known.height, 'held'),
        leg.phase,
        true,
      );
      this.goOn(known);
      glideAlongLine(medium, leg.track, until, hasLast(leg) ? 'left' : 'held').settle?.(this.state);
      return;
    }
    const from = this.state.slice();
    this.steady(medium, leg, until);
    if (kept && this.flyable) glides.set(this.conditions, this.remember(leg, from));
  }

  /**
   * Along a line at a steady speed, held with the nose; in the last part of a final it is no longer held. A search
   * that comes to final below where the leg ends goes back up to that height, with the speed held.
   */
  private steady(medium: Medium, leg: LineLeg, until: Motion['remaining']): void {
    const { track, phase } = leg;
    const searching = this.mode === 'search';
    // Over already, with the nose where the change of speed has put it.
    if (Math.abs(until(this.state)) < 1e-6) return;
    if (!hasLast(leg) || until(this.state) < 0) {
      this.run(glideAlongLine(medium, track, until, 'held'), phase, searching);
      return;
    }
    const above = (state: State) => state[HEIGHT]! - speedHeldDownTo;
    if (above(this.state) > 0) this.run(glideAlongLine(medium, track, above, 'held'), phase);
    this.run(glideAlongLine(medium, track, until, 'left'), phase);
  }

  /** What a leg flown from there to here came to. */
  private remember<Of extends Leg>(leg: Of, from: State): Remembered<Of> {
    const { state } = this;
    const since = (i: number) => state[i]! - from[i]!;
    return {
      leg,
      height: from[HEIGHT]!,
      eas: from[EAS]!,
      path: from[PATH]!,
      along: since(ALONG),
      across: since(ACROSS),
      time: since(TIME),
      endHeight: state[HEIGHT]!,
      endEas: state[EAS]!,
    };
  }

  /** Goes to the end of a leg that is already known from here. */
  private goOn({ along, across, time, endHeight, endEas }: Remembered<Leg>): void {
    const { state } = this;
    state[ALONG]! += along;
    state[ACROSS]! += across;
    state[TIME]! += time;
    state[HEIGHT] = endHeight;
    state[EAS] = endEas;
  }

  private turn(leg: TurnLeg): void {
    const { conditions } = this;
    const { side, bank, phase } = leg;
    const rate = side * conditions.rollRate;
    const rollOutRate = leg.rollOut ? conditions.rollRate : Number.POSITIVE_INFINITY;
    const toRollOut = headingBeforeRollOut(conditions, leg.track, side, rollOutRate);
    const toBank = (state: State) => bank - side * state[BANK]!;
    this.run(
      glidingTurn(conditions, rate, (state) => Math.min(toBank(state), toRollOut(state))),
      phase,
    );
    this.run(glidingTurn(conditions, 0, toRollOut), phase);
    if (!leg.rollOut) return;
    this.run(
      glidingTurn(conditions, -rate, (state) => side * state[BANK]!),
      phase,
    );
    if (!this.onGround) this.state[BANK] = 0;
  }

  private circle(leg: CircleLeg): void {
    const { side, to } = leg;
    this.state[TRACK] = leg.from;
    this.run(
      glideRoundCircle(this.conditions, leg.radius, side, (state) => side * (to - state[TRACK]!)),
      leg.phase,
      false,
      () => {
        this.steepestCircle = Math.max(this.steepestCircle, Math.abs(this.state[BANK]!));
      },
    );
  }

  private landing(leg: LandingLeg): void {
    if (this.mode === 'honest') {
      this.flyLanding(leg);
      return;
    }
    // Every trial of a search comes to the round-out at one height and speed, and lands from there in the same
    // distance.
    const { state } = this;
    const known = landings.get(this.conditions);
    if (known && sameLanding(known.leg, leg) && near(known, state)) {
      this.goOn(known);
      return;
    }
    const from = state.slice();
    this.flyLanding(leg);
    landings.set(this.conditions, this.remember(leg, from));
  }

  private flyLanding(leg: LandingLeg): void {
    const { conditions, state } = this;
    const { span, aboveWheels } = conditions.aircraft.wing;
    const landing = { wingSpan: span, wingAboveWheels: aboveWheels };
    const begun = leg.firmer ? state.slice() : undefined;
    this.run(roundOut(conditions, landing, leg.pull), 'round-out');
    if (begun && state[HEIGHT]! <= groundContact) {
      const pull = firmerPull(begun, conditions);
      if (pull === undefined) {
        this.flyable = false;
        return;
      }
      state.set(begun);
      this.run(roundOut(conditions, landing, pull), 'round-out');
    }
    if (this.onGround) return;
    state[PATH] = 0;
    const motion = holdOff(conditions, landing, {
      level: state[HEIGHT]!,
      entryEas: state[EAS]!,
      touchdownEas: leg.touchdownEas,
    });
    const { flyable } = this;
    this.run(motion, 'hold-off');
    // A search goes on past a landing that cannot be held off; the flight itself does not.
    if (this.mode === 'search') this.flyable = flyable;
    else if (!this.flyable) return;
    state[HEIGHT] = 0;
  }

  private run(motion: Motion, phase: Phase, backward = false, watch?: () => void): void {
    const honest = this.mode === 'honest' && phase !== 'hold-off';
    const flown: Motion = honest
      ? { ...motion, remaining: (state) => Math.min(motion.remaining(state), state[HEIGHT]!) }
      : motion;
    const onStep = this.keepTrack
      ? () => {
          watch?.();
          this.sample(phase, motion);
        }
      : watch;
    const { duration, ended } = this.integrator.run(flown, this.state, backward, onStep);
    if (!ended || Math.abs(duration) > longestLeg) this.flyable = false;
  }

  private sample(phase: Phase, motion: Motion): void {
    const { state, conditions, drift } = this;
    const height = state[HEIGHT]!;
    const tas =
      state[EAS]! * conditions.tasOverEas(phase === 'round-out' || phase === 'hold-off' ? 0 : height);
    const rates = new Float64Array(stateSize);
    motion.derivative(state, rates);
    conditions.wind(height, drift);
    // A leg that is over as it begins takes no time: its sample replaces the last one.
    if (this.track.at(-1)?.time === this.time) this.track.pop();
    this.track.push({
      time: this.time,
      along: state[ALONG]!,
      across: state[ACROSS]!,
      height,
      heading: this.runwayHeading + state[HEADING]!,
      bank: state[BANK]!,
      eas: state[EAS]!,
      tas,
      sink: -rates[HEIGHT]!,
      groundspeed: Math.hypot(rates[ALONG]!, rates[ACROSS]!),
      phase,
    });
  }
}

/** Whether a line is a final that leads below the height where the airspeed is held. */
function hasLast({ until }: LineLeg): boolean {
  return 'reaches' in until && until.reaches === 'height' && until.value < speedHeldDownTo;
}

function endsAtHeight({ until }: LineLeg): boolean {
  return 'reaches' in until && until.reaches === 'height';
}

function sameGlide(a: LineLeg, b: LineLeg): boolean {
  return (
    a.track === b.track &&
    a.steep === b.steep &&
    'reaches' in a.until &&
    'reaches' in b.until &&
    a.until.reaches === b.until.reaches &&
    a.until.value === b.until.value
  );
}

function sameLanding(a: LandingLeg, b: LandingLeg): boolean {
  return a.pull === b.pull && a.firmer === b.firmer && a.touchdownEas === b.touchdownEas;
}

/** The same, to less than the tolerance of an event. */
function near({ height, eas, path }: Remembered<Leg>, state: State): boolean {
  return (
    Math.abs(height - state[HEIGHT]!) < 1e-5 &&
    Math.abs(eas - state[EAS]!) < 1e-7 &&
    Math.abs(path - state[PATH]!) < 1e-7
  );
}

/** The track that a leg begins on; a turn begins on any, a landing on the centreline. */
function trackOf(leg: Leg): number {
  if (leg.kind === 'line' || leg.kind === 'motion') return leg.track;
  return leg.kind === 'circle' ? leg.from : 0;
}

/** What is left of a line leg, as a function of the state. */
export function leftOf(until: Until, now: State): (state: State) => number {
  if ('lasts' in until) {
    const end = now[TIME]! + until.lasts;
    return (state) => end - state[TIME]!;
  }
  const coordinate = { along: ALONG, across: ACROSS, height: HEIGHT }[until.reaches];
  const { growing, value } = until;
  return (state) => growing * (value - state[coordinate]!);
}

/** Flies a whole procedure to the ground, keeping the track. `step` in s bounds the integrator's steps. */
export function flyProcedure(
  procedure: Procedure,
  conditions: Conditions,
  runwayHeading: number,
  step?: number,
): Flight {
  const [first] = procedure.legs;
  if (!first) throw new Error('a procedure has at least one leg');
  const flight = new Flight(conditions, runwayHeading, 'honest', { step });
  flight.begin(procedure.start, first);
  for (const leg of procedure.legs) flight.leg(leg);
  return flight;
}
