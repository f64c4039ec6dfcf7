import type { Phase } from './plan.ts';

/** 1 for a right-hand pattern and right turns, -1 for left. */
export type Side = 1 | -1;

/** What ends a leg flown along a line. */
export interface Until {
  readonly reaches: 'along' | 'across' | 'height';
  /** m, in the spot frame. */
  readonly value: number;
  /** 1 where the coordinate grows towards the value on this leg, -1 where it falls to it. */
  readonly growing: Side;
}

/** A ground line followed with drift allowed for. `track` in rad from the landing direction, clockwise. */
export interface LineLeg {
  readonly kind: 'line';
  readonly phase: Phase;
  readonly track: number;
  readonly until: Until;
  /** m/s EAS. */
  readonly eas: number;
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
  /** m/s EAS. */
  readonly touchdownEas: number;
}

export type Leg = LineLeg | TurnLeg | LandingLeg;

/** Where and how an approach starts, in the spot frame. */
export interface Start {
  readonly along: number;
  readonly across: number;
  readonly height: number;
  /** m/s EAS. */
  readonly eas: number;
}

/** An approach: legs, each with what is followed and what ends it. */
export interface Procedure {
  readonly start: Start;
  readonly legs: readonly Leg[];
}
