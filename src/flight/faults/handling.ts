import { standardGravity } from '../air/constants.ts';
import { crab, stillAir } from '../air/wind.ts';
import { rollOutLead } from '../aircraft/turns.ts';
import { leftOf } from '../flying/fly.ts';
import {
  ACROSS,
  ALONG,
  BANK,
  directionOf,
  EAS,
  glideAlongLine,
  glideRoundCircle,
  glidingTurn,
  HEADING,
  HEIGHT,
  headingBeforeRollOut,
  type Medium,
  overGround,
  speedHeldDownTo,
  TIME,
  TRACK,
  type Until,
} from '../flying/motions.ts';
import type { CircleLeg, Leg, LineLeg, MotionLeg, Side, TurnLeg } from '../flying/procedure.ts';
import type { Motion, State } from '../numerics/integrator.ts';
import { cosine, sine } from '../numerics/steady-math.ts';
import type { Phase } from '../terms/plan.ts';

// Ways of handling the aircraft that no plan asks for, as legs.

/** Level along a track at the speed that it begins with, for some seconds, drift allowed for: the power that takes is on. */
export function levelLeg(track: number, seconds: number, phase: Phase): MotionLeg {
  return {
    kind: 'motion',
    phase,
    track,
    from: (medium, start) => {
      const wind = stillAir();
      const end = start[TIME]! + seconds;
      const direction = directionOf(track);
      const airspeed = (state: State) => state[EAS]! * medium.tasOverEas(state[HEIGHT]!);
      return {
        longestStep: 8,
        moves: [ALONG, ACROSS, TIME],
        derivative(state, rates) {
          medium.wind(state[HEIGHT]!, wind);
          overGround(rates, direction, airspeed(state), wind);
          rates[TIME] = 1;
          rates[HEIGHT] = 0;
        },
        remaining: (state) => end - state[TIME]!,
        settle(state) {
          medium.wind(state[HEIGHT]!, wind);
          state[HEADING] = track + crab(track, airspeed(state), wind);
        },
      };
    },
  };
}

/** Straight on a heading, drift not allowed for, until what ends a line does. */
export function headingLeg(line: LineLeg): MotionLeg {
  return {
    kind: 'motion',
    phase: line.phase,
    track: line.track,
    from: (medium, state) => {
      state[HEADING] = line.track;
      state[BANK] = 0;
      // A turn without bank.
      return glidingTurn(medium, 0, leftOf(line.until, state));
    },
  };
}

/** A turn that rolls out with the nose on the track, whatever the wind. */
export function headingTurn(turn: TurnLeg): MotionLeg[] {
  const { side, track } = turn;
  return inThree(turn, (medium, rollRate) => (state) => {
    const tas = state[EAS]! * medium.tasOverEas(state[HEIGHT]!);
    return side * (track - state[HEADING]!) - rollOutLead(tas, state[BANK]!, rollRate);
  });
}

/** Less bank, in the course of a turn. */
export function easeBank(turn: TurnLeg, bank: number): MotionLeg {
  const { phase, track, side } = turn;
  return {
    kind: 'motion',
    phase,
    track,
    from: (medium, start) =>
      side * start[BANK]! > bank
        ? glidingTurn(medium, -side * medium.rollRate, (state) => side * state[BANK]! - bank)
        : over,
  };
}

/** A turn flown as roll-in, bank held, roll-out. */
function inThree(
  { side, bank, phase, track, rollOut }: TurnLeg,
  toRollOut: (medium: Medium, rollRate: number) => Until,
  handle: (motion: Motion, medium: Medium) => Motion = (motion) => motion,
): MotionLeg[] {
  const part = (rolling: -1 | 0 | 1, until: (left: Until) => Until): MotionLeg => ({
    kind: 'motion',
    phase,
    track,
    from: (medium) => {
      const left = toRollOut(medium, rollOut ? medium.rollRate : Number.POSITIVE_INFINITY);
      return handle(turning(medium, rolling * side * medium.rollRate, until(left)), medium);
    },
  });
  const legs = [
    part(1, (left) => (state) => Math.min(bank - side * state[BANK]!, left(state))),
    part(0, (left) => left),
  ];
  if (rollOut) legs.push(part(-1, () => (state) => side * state[BANK]!));
  return legs;
}

/** A gliding turn whose speed may change: the planner's takes its sink once for a bank. */
function turning(medium: Medium, rollRate: number, until: Until): Motion {
  const motion = glidingTurn(medium, rollRate, until);
  return {
    ...motion,
    derivative: (state, rates) => glidingTurn(medium, rollRate, until).derivative(state, rates),
  };
}

/** The airspeed swings: a share of the planned one, either way, with a period in s, from the start of the glide. */
export interface Wander {
  readonly amplitude: number;
  readonly period: number;
}

/** A leg flown with the airspeed wandering about what it asks for. */
export function wanderingLegs(leg: Leg, wander: Wander): Leg[] {
  if (leg.kind === 'line') return wanderingLine(leg, wander);
  if (leg.kind === 'turn') {
    return inThree(
      leg,
      (medium, rollRate) => headingBeforeRollOut(medium, leg.track, leg.side, rollRate),
      (motion, medium) => wandering(motion, medium, wander),
    );
  }
  return leg.kind === 'circle' ? [wanderingCircle(leg, wander)] : [leg];
}

function wanderingLine({ phase, track, until, eas }: LineLeg, wander: Wander): MotionLeg[] {
  const planned = (state: State) => state[EAS]! / swing(state, wander);
  return [
    {
      kind: 'motion',
      phase,
      track,
      from: (medium, start) => {
        const gap = eas - planned(start);
        if (Math.abs(gap) < 1e-9) return over;
        const change = gap > 0 ? 1 : -1;
        const left = leftOf(until, start);
        const reached = (state: State) => Math.min(change * (eas - planned(state)), left(state));
        return wandering(
          glideAlongLine(medium, track, reached, gap > 0 ? 'faster' : 'slower'),
          medium,
          wander,
        );
      },
    },
    ...[true, false].map(
      (held): MotionLeg => ({
        kind: 'motion',
        phase,
        track,
        from: (medium, start) => {
          const left = leftOf(until, start);
          const end = held ? (now: State) => Math.min(left(now), now[HEIGHT]! - speedHeldDownTo) : left;
          return wandering(glideAlongLine(medium, track, end, held ? 'held' : 'left'), medium, wander);
        },
      }),
    ),
  ];
}

function wanderingCircle({ phase, from, to, radius, side }: CircleLeg, wander: Wander): MotionLeg {
  return {
    kind: 'motion',
    phase,
    track: from,
    from: (medium, start) => {
      start[TRACK] = from;
      const left = (state: State) => side * (to - state[TRACK]!);
      return wandering(glideRoundCircle(medium, radius, side as Side, left), medium, wander);
    },
  };
}

function swing(state: State, { amplitude, period }: Wander): number {
  return 1 + amplitude * sine((2 * Math.PI * state[TIME]!) / period);
}

/** A glide with its airspeed swinging: what is gained in speed is paid for in height, d(V^2/2g)/dt, and given back. */
function wandering(motion: Motion, medium: Medium, wander: Wander): Motion {
  const rate = (2 * Math.PI) / wander.period;
  const changes = motion.moves?.includes(EAS) ?? true;
  return {
    ...motion,
    longestStep: Math.min(0.5, wander.period / 16),
    moves: [...new Set([...(motion.moves ?? []), EAS])],
    derivative(state, rates) {
      motion.derivative(state, rates);
      const eas = state[EAS]!;
      const factor = medium.tasOverEas(state[HEIGHT]!);
      const now = swing(state, wander);
      const swinging = (eas / now) * wander.amplitude * rate * cosine(rate * state[TIME]!);
      const planned = changes ? rates[EAS]! : 0;
      rates[EAS] = planned + swinging;
      rates[HEIGHT]! -= (eas * factor * swinging * factor) / standardGravity;
    },
  };
}

/** A motion that is over as it begins. */
const over: Motion = {
  longestStep: 1,
  moves: [],
  derivative: () => undefined,
  remaining: () => 0,
};
