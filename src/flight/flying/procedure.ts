import type { Motion, State } from '../numerics/integrator.ts';
import type { Phase } from '../terms/plan.ts';
import type { Conditions } from './conditions.ts';

/** 1 for a right-hand pattern and right turns, -1 for left. */
export type Side = 1 | -1;

/** What ends a leg flown along a line: reaching a coordinate of the spot frame (m), or the passing of a time (s). */
export type Until =
  | {
      readonly reaches: 'along' | 'across' | 'height';
      readonly value: number;
      /** 1 where the coordinate grows towards the value on this leg, -1 where it falls to it. */
      readonly growing: Side;
    }
  | { readonly lasts: number };

/** A ground line followed with drift allowed for. `track` in rad from the landing direction, clockwise. */
export interface LineLeg {
  readonly kind: 'line';
  readonly phase: Phase;
  readonly track: number;
  readonly until: Until;
  /** m/s EAS. */
  readonly eas: number;
  /** True where the steep approach is flown: its polar, at its speed. */
  readonly steep?: boolean;
}

/** A circle held on the ground with drift allowed for: the bank changes round it with the wind. */
export interface CircleLeg {
  readonly kind: 'circle';
  readonly phase: Phase;
  /** m. */
  readonly radius: number;
  readonly side: Side;
  /** rad, not wrapped: the track that the leg begins on, and the one that ends it. */
  readonly from: number;
  readonly to: number;
}

/** A turn at a constant bank (rad, positive) to the heading that holds `track` afterwards. */
export interface TurnLeg {
  readonly kind: 'turn';
  readonly phase: Phase;
  readonly track: number;
  readonly side: Side;
  readonly bank: number;
  /** False where the next leg goes on turning: the bank stays on. */
  readonly rollOut: boolean;
}

/** Round-out and hold-off to the touchdown. */
export interface LandingLeg {
  readonly kind: 'landing';
  /** Load factor of the pull. */
  readonly pull: number;
  /** True where the pull is made harder, as hard as it takes, if this one is not level before the ground. */
  readonly firmer?: boolean;
  /** m/s EAS. */
  readonly touchdownEas: number;
}

/** Whatever else can be flown to an end of its own: what a fault does and a planned approach never does. */
export interface MotionLeg {
  readonly kind: 'motion';
  readonly phase: Phase;
  /** rad, not wrapped: the track that it begins on, where it is the first leg. */
  readonly track: number;
  /** The motion from the state at which the leg begins, which it may first bring up to date. */
  readonly from: (conditions: Conditions, state: State) => Motion;
}

export type Leg = LineLeg | TurnLeg | CircleLeg | LandingLeg | MotionLeg;

/** Where and how an approach starts, in the spot frame, wings level. */
export interface Start {
  readonly along: number;
  readonly across: number;
  readonly height: number;
  /** m/s EAS. */
  readonly eas: number;
  /** rad from the landing direction, not wrapped. Left out: the heading that holds the first leg's track. */
  readonly heading?: number;
}

/** An approach as legs, each with what it follows and what ends it. */
export interface Procedure {
  readonly start: Start;
  readonly legs: readonly Leg[];
}
