import type { Conditions } from './conditions.ts';
import { Integrator, type Motion, type State } from './integrator.ts';
import {
  ACROSS,
  ALONG,
  BANK,
  EAS,
  glideAlongLine,
  glidingTurn,
  HEADING,
  HEIGHT,
  headingBeforeRollOut,
  holdOff,
  PATH,
  roundOut,
  stateSize,
} from './motions.ts';
import type { Phase, TrackSample } from './plan.ts';
import type { LandingLeg, Leg, LineLeg, Procedure, Start, TurnLeg } from './procedure.ts';
import type { Drift } from './wind.ts';

/** `honest`: a flight ends where it meets the ground. `search`: the ground is ignored and a leg whose end has
 * already passed is flown backward to it, so that what the solver looks at is smooth on both sides of the answer. */
export type Mode = 'honest' | 'search';

/** m. Nearer to the ground than this is on it. */
const groundContact = 1e-6;

/** s. Samples of a track lie at most this far apart. */
const sampleSpacing = 0.5;

/** s. A leg's end that comes later than this is not a leg. */
const longestLeg = 1500;

/** A flight under way: its state, its clock, and its track where that is kept. */
export class Flight {
  readonly conditions: Conditions;
  readonly state: State = new Float64Array(stateSize);
  time = 0;
  /** False once a leg did not come to its end: the wind is stronger than the glide. */
  flyable = true;
  readonly track: TrackSample[] = [];
  private readonly runwayHeading: number;
  private readonly mode: Mode;
  private readonly integrator: Integrator;
  private readonly keepTrack: boolean;
  private readonly drift: Drift = { along: 0, across: 0 };

  constructor(conditions: Conditions, runwayHeading: number, mode: Mode, keepTrack = false, step?: number) {
    this.conditions = conditions;
    this.runwayHeading = runwayHeading;
    this.mode = mode;
    this.keepTrack = keepTrack;
    this.integrator = new Integrator(stateSize, step ?? (keepTrack ? sampleSpacing : undefined));
  }

  /** Takes up the start, already holding the track of the first leg. */
  begin(start: Start, first: LineLeg): void {
    const { state } = this;
    state.fill(0);
    state[ALONG] = start.along;
    state[ACROSS] = start.across;
    state[HEIGHT] = start.height;
    state[EAS] = start.eas;
    glideAlongLine(this.conditions, first.track, () => 0, 0).settle?.(state);
    if (this.keepTrack)
      this.sample(
        first.phase,
        glideAlongLine(this.conditions, first.track, () => 0, 0),
      );
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
      else this.landing(leg);
    }
    return this.time - before;
  }

  private line(leg: LineLeg): void {
    const coordinate = { along: ALONG, across: ACROSS, height: HEIGHT }[leg.until.reaches];
    const { growing, value } = leg.until;
    const until = (state: State) => growing * (value - state[coordinate]!);
    const gap = leg.eas - this.state[EAS]!;
    const backward = until(this.state) < 0;
    if (gap !== 0 && !backward) {
      const change = gap > 0 ? 1 : -1;
      const reached = (state: State) => Math.min(change * (leg.eas - state[EAS]!), until(state));
      this.run(glideAlongLine(this.conditions, leg.track, reached, change), leg.phase);
      if (Math.abs(leg.eas - this.state[EAS]!) < 1e-9) this.state[EAS] = leg.eas;
    }
    this.run(glideAlongLine(this.conditions, leg.track, until, 0), leg.phase, this.mode === 'search');
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

  private landing(leg: LandingLeg): void {
    const { conditions, state } = this;
    const { span, aboveWheels } = conditions.aircraft.wing;
    const landing = { wingSpan: span, wingAboveWheels: aboveWheels };
    this.run(roundOut(conditions, landing, leg.pull), 'round-out');
    if (this.onGround) return;
    state[PATH] = 0;
    const motion = holdOff(conditions, landing, state[HEIGHT]!, state[EAS]!, leg.touchdownEas);
    this.run(motion, 'hold-off');
    state[HEIGHT] = 0;
  }

  private run(motion: Motion, phase: Phase, backward = false): void {
    const honest = this.mode === 'honest' && phase !== 'hold-off';
    const flown: Motion = honest
      ? { ...motion, remaining: (state) => Math.min(motion.remaining(state), state[HEIGHT]!) }
      : motion;
    const start = this.time;
    const onStep = this.keepTrack
      ? (elapsed: number) => {
          this.time = start + elapsed;
          this.sample(phase, motion);
        }
      : undefined;
    const { duration, ended } = this.integrator.run(flown, this.state, backward, onStep);
    this.time = start + duration;
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
    // A leg that is over as it begins takes no time: its sample stands in for the last one.
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

/** Flies a whole procedure, keeping the track; each leg's end is reported as it comes. */
export function flyProcedure(
  procedure: Procedure,
  conditions: Conditions,
  runwayHeading: number,
  onLegEnd?: (leg: Leg, flight: Flight) => void,
  step?: number,
): Flight {
  const flight = new Flight(conditions, runwayHeading, 'honest', true, step);
  const [first] = procedure.legs;
  if (first?.kind !== 'line') throw new Error('an approach starts on a straight leg');
  flight.begin(procedure.start, first);
  for (const leg of procedure.legs) {
    flight.leg(leg);
    onLegEnd?.(leg, flight);
  }
  return flight;
}
