import { stillAir } from '../air/wind.ts';
import { stallSpeedUnder } from '../aircraft/turns.ts';
import { Integrator, type Motion, type State } from '../numerics/integrator.ts';
import type { Conditions } from './conditions.ts';
import {
  ACROSS,
  ALONG,
  BANK,
  EAS,
  HEADING,
  HEIGHT,
  holdOff,
  PATH,
  roundOut,
  stateSize,
  TIME,
} from './motions.ts';
import type { Leg, MotionLeg } from './procedure.ts';
import { firmerPull } from './round-out-pull.ts';

/** What is changed in the landing; with everything left out, it is the planned one. */
export interface LandingChange {
  /** Load factor in place of the planned one. */
  readonly pull?: number | undefined;
  /** True where the hands pull as planned, from whatever height: a pilot who begins late does not know it. */
  readonly pullAsPlanned?: boolean | undefined;
  /** m/s EAS at which the wheels are put down. */
  readonly touchdownEas?: number | undefined;
  /** The nose kept straight through the hold-off, and the drift not stopped. */
  readonly noseStraight?: boolean | undefined;
  /** m: the planned hold-off comes down by this much and no more, although the round-out came level higher. */
  readonly comesDown?: number | undefined;
}

/** Notes of a landing, written while it is flown. */
export interface LandingLog {
  pull?: number;
  pullMargin?: number;
  level?: { height: number; eas: number; along: number; time: number };
  dropped?: boolean;
}

/** m. A drop from lower than this is a touchdown: about four inches (a judgement of ours, no source). */
export const leastDrop = 0.1;

const integrator = new Integrator(stateSize);

/**
 * Round-out and hold-off as they follow from the speed that the round-out begins with: the aircraft's own pull, or as
 * much more as it takes to be level in time, as in a plan.
 */
export function landingLegs(change: LandingChange, planned: number, log: LandingLog): Leg[] {
  const rounding: MotionLeg = {
    kind: 'motion',
    phase: 'round-out',
    track: 0,
    from: (conditions, state) => {
      const own = change.pullAsPlanned ? planned : (firmerPull(state, conditions) ?? planned);
      const pull = change.pull ?? own;
      log.pull = pull;
      log.pullMargin = state[EAS]! / stallSpeedUnder(pull, conditions.speeds.stall);
      const motion = roundOut(conditions, landingOf(conditions), pull);
      if (pull <= own) return motion;
      // The hands stop when they always do.
      const end = state[TIME]! + secondsToLevel(conditions, state, own);
      return { ...motion, remaining: (now) => end - now[TIME]! };
    },
  };
  // Where the pull went on beyond level, the same movement back.
  const easing: MotionLeg = {
    kind: 'motion',
    phase: 'round-out',
    track: 0,
    from: (conditions) => {
      const motion = roundOut(conditions, landingOf(conditions), 2 - (log.pull ?? 1));
      return { ...motion, remaining: (now) => -now[PATH]! };
    },
  };
  const holding: MotionLeg = {
    kind: 'motion',
    phase: 'hold-off',
    track: 0,
    from: (conditions, state) => heldOff(conditions, state, change, log),
  };
  return [rounding, easing, holding];
}

function heldOff(conditions: Conditions, state: State, change: LandingChange, log: LandingLog): Motion {
  state[PATH] = 0;
  const [level, entry] = [state[HEIGHT]!, state[EAS]!];
  log.level = { height: level, eas: entry, along: state[ALONG]!, time: state[TIME]! };
  const touchdownEas = change.touchdownEas ?? conditions.speeds.touchdown;
  if (entry <= touchdownEas) {
    log.dropped = true;
    return { longestStep: 1, moves: [], derivative: () => undefined, remaining: () => 0 };
  }
  const down = Math.min(level, change.comesDown ?? level);
  log.dropped = level - down > leastDrop;
  const motion = holdOff(conditions, landingOf(conditions), { level: down, entryEas: entry, touchdownEas });
  return change.noseStraight ? drifting(motion, conditions) : motion;
}

/**
 * The wind carries the aircraft as it will, with the airspeed straight down the runway. The full side speed comes on
 * at once: it is the most there can be.
 */
function drifting(motion: Motion, conditions: Conditions): Motion {
  const wind = stillAir();
  const straight = (state: State) => {
    state[HEADING] = 0;
    state[BANK] = 0;
  };
  return {
    ...motion,
    derivative(state, rates) {
      motion.derivative(state, rates);
      conditions.wind(state[HEIGHT]!, wind);
      rates[ALONG] = state[EAS]! * conditions.tasOverEas(0) + wind.along;
      rates[ACROSS] = wind.across;
    },
    settle: straight,
  };
}

function secondsToLevel(conditions: Conditions, from: State, pull: number): number {
  const state = Float64Array.from(from);
  return integrator.run(roundOut(conditions, landingOf(conditions), pull), state, false).duration;
}

function landingOf({ aircraft: { wing } }: Conditions) {
  return { wingSpan: wing.span, wingAboveWheels: wing.aboveWheels };
}
