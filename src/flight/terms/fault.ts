import type { Caution } from './caution.ts';
import type { RequestError } from './errors.ts';
import type { KeyId } from './key.ts';
import type { KeyPosition, Phase, TrackSample } from './plan.ts';

/** What is done to a number: a share of it added (`factor` 1.4 for 40 % more), an amount added, or another put in its place. */
export type Amount = { readonly factor: number } | { readonly by: number } | { readonly to: number };

/**
 * A common error: the planned procedure, the handling or the air with one thing changed. SI, rad. The pilot does not
 * notice: whatever the change does not name is done as planned (see `changedApproach`).
 */
export type FaultChange =
  /** Distance of the downwind leg from the centreline, m. */
  | { readonly kind: 'spacing'; readonly amount: Amount }
  /** The base turn begun this many seconds late; negative for early. */
  | { readonly kind: 'base-turn'; readonly seconds: number }
  /** The base turn begun after the count that still air asks for. */
  | { readonly kind: 'base-turn-as-in-still-air' }
  /** Surface wind from the planned direction, m/s; the base turn begun at the planned mark on the ground. */
  | { readonly kind: 'wind'; readonly amount: Amount }
  /** On base the nose is held square to the runway. */
  | { readonly kind: 'base-drift' }
  /** All airspeeds to the round-out, by a factor. */
  | { readonly kind: 'glide-speed'; readonly factor: number }
  /** The airspeed swings about the planned one: a share of it, a period in s. */
  | { readonly kind: 'glide-speed-wandering'; readonly amplitude: number; readonly period: number }
  /** Bank of the turn to final, rad, the turn begun where planned. */
  | { readonly kind: 'final-turn-bank'; readonly amount: Amount }
  /** Level past the key this many seconds before the throttle closes. */
  | { readonly kind: 'throttle'; readonly seconds: number }
  /** Airspeed at which the glide begins, m/s EAS. */
  | { readonly kind: 'start-speed'; readonly amount: Amount }
  /** Mass, kg; the planned airspeeds are held. */
  | { readonly kind: 'mass'; readonly amount: Amount }
  /** Engine stopped where idling was practised; the practised airspeeds are held. */
  | { readonly kind: 'power-stopped' }
  /** Airspeed of final, m/s EAS. */
  | { readonly kind: 'final-speed'; readonly amount: Amount }
  /** m added where final begins. */
  | { readonly kind: 'final-height'; readonly by: number }
  /**
   * Airspeed of final and at the round-out, m/s EAS; the round-out begins at its planned place: kept high, and dived for
   * the aim point.
   */
  | { readonly kind: 'round-out-speed'; readonly amount: Amount }
  /** Wheel height at which the round-out begins, m. */
  | { readonly kind: 'round-out-height'; readonly amount: Amount }
  /** Load factor of the round-out, held for as long as the planned one is. */
  | { readonly kind: 'round-out-load-factor'; readonly amount: Amount }
  /** Airspeed at which the wheels are put down, m/s EAS. */
  | { readonly kind: 'touchdown-speed'; readonly amount: Amount }
  /** The nose straight and the drift not stopped through the hold-off. */
  | { readonly kind: 'touchdown-drift' };

export type FaultKind = FaultChange['kind'];

/** Why a fault is not flown on an approach. */
export type FaultRefusal =
  | 'leg-cannot-be-flown'
  | 'stalls'
  | 'already-stopped'
  | 'pull-too-weak'
  | 'no-base-turn'
  | 'before-downwind-key'
  | 'too-little-wind'
  | 'no-downwind-distance'
  | 'downwind-on-runway'
  | 'no-base-leg'
  | 'circle-to-final'
  | 'bank-out-of-range'
  | 'throttle-early'
  | 'nothing-before-landing'
  | 'begins-in-circle'
  | 'no-turn-to-final'
  | 'no-final-left'
  | 'no-height-for-speed'
  | 'round-out-off-final'
  | 'under-stall-speed'
  | 'no-speed-left';

/** A fault that cannot be flown on this approach, and why. */
export interface FaultNotFlown {
  readonly flown: false;
  readonly change: FaultChange;
  readonly reason: FaultRefusal | RequestError;
}

/** A fault as flown. SI, rad, spot frame, as in a plan. */
export interface FaultFlown {
  readonly flown: true;
  readonly change: FaultChange;
  /** From the first sample to where the flight, or what can honestly be said of it, ends. */
  readonly track: readonly TrackSample[];
  readonly keys: readonly KeyPosition[];
  /** Where it ends, m from the spot: short where `along` is negative, left of the landing direction where `across` is. */
  readonly end: FaultEnd;
  readonly landing: FaultLanding;
  readonly plannedLanding: LandingFigures;
  /** What each key shows against the plan, in the order they are flown. */
  readonly differences: readonly KeyDifference[];
  /** The first key at which the eye can tell; undefined where none shows it. */
  readonly shows: KeyDifference | undefined;
  readonly stall: { readonly planned: StallMargins; readonly flown: StallMargins };
  /** m, wings level on final; undefined where final is not reached. */
  readonly finalHeight: number | undefined;
  /** Of the flight with the fault. */
  readonly cautions: readonly Caution[];
}

export type FaultFlight = FaultFlown | FaultNotFlown;

export interface FaultEnd {
  readonly along: number;
  readonly across: number;
  /** m above the spot: nought on the ground, more where the flight ends in a drop. */
  readonly height: number;
  readonly time: number;
  readonly eas: number;
  readonly groundspeed: number;
  readonly phase: Phase;
}

/** What of a landing the figures do not say. */
export type BeyondTheModel = 'strike' | 'drop' | 'bounce' | 'ground' | 'drift';

/** The landing in figures. */
export interface LandingFigures {
  /** m, m/s EAS: where the round-out is level. */
  readonly level: { readonly height: number; readonly eas: number } | undefined;
  /** m over the ground and s from there to the end. */
  readonly holdOff: { readonly distance: number; readonly time: number } | undefined;
  /** How far the aircraft climbs out of the round-out, m, and for how long, s; undefined where it does not. */
  readonly balloon: { readonly rise: number; readonly time: number } | undefined;
  /** Load factor of the round-out, and the airspeed at its start over the stall speed under it. */
  readonly pull: number | undefined;
  readonly pullMargin: number | undefined;
}

export type FaultLanding = LandingFigures & (Touched | Struck | Dropped | ShortOfLanding);

/** The wheels touch out of the hold-off. `sink` and `side` (over the ground, right positive) in m/s. */
export interface Touched {
  readonly how: 'touched';
  readonly sink: number;
  readonly side: number;
  /** rad between the nose and the way over the ground, positive where the way leads to the right of the nose. */
  readonly drift: number;
  /** What the model does not say of what comes after; undefined where nothing remarkable does. */
  readonly beyond?: BeyondTheModel | undefined;
}

/** The wheels strike while the round-out is still coming down. */
export interface Struck {
  readonly how: 'struck';
  readonly sink: number;
  readonly beyond: BeyondTheModel;
}

/** The speed is gone before the height: `drop` m are left. */
export interface Dropped {
  readonly how: 'dropped';
  readonly drop: number;
  readonly beyond: BeyondTheModel;
}

/** The ground is met before the round-out. */
export interface ShortOfLanding {
  readonly how: 'no-landing';
  readonly beyond: BeyondTheModel;
}

/** A key of the plan, and the same key with the fault. m, s. */
export interface KeyDifference {
  readonly at: KeyId;
  /** Higher (positive) or lower than planned when passing the planned key's place: abeam it on the leg that it belongs to. */
  readonly heightThere: number | undefined;
  /** The fault's own key against the planned one; undefined where it is not flown. */
  readonly height: number | undefined;
  readonly along: number | undefined;
  readonly across: number | undefined;
  readonly time: number | undefined;
}

/** Lowest airspeed over the stall speed under the load of the bank, before the round-out; undefined where not flown. */
export interface StallMargins {
  readonly turning: number | undefined;
  readonly straight: number | undefined;
}

/** How a pilot who notices puts an approach right. */
export type RecoveryWay =
  | 'cut-corner'
  | 'best-speed'
  | 'move-out'
  | 'widen'
  | 's-turn'
  | 'steep-approach'
  | 'line-up';

/** Why a way does not make the spot. */
export type RecoveryRefusal = 'leg-not-reached' | 'no-steep-approach' | 'too-late';

/** The last point of a faulty flight from which a way still makes the spot, or why none is. m, s. */
export type FaultRecovery =
  | {
      readonly by: RecoveryWay;
      readonly makes: true;
      readonly height: number;
      readonly time: number;
      readonly along: number;
      readonly across: number;
      readonly phase: Phase;
      /** True where it makes the spot up to the end of the leg on which it is done: the height is the leg's end. */
      readonly lasts: boolean;
    }
  | { readonly by: RecoveryWay; readonly makes: false; readonly reason: RecoveryRefusal };

/** A number with something done to it. */
export function changed(value: number, amount: Amount): number {
  if ('factor' in amount) return value * amount.factor;
  return 'by' in amount ? value + amount.by : amount.to;
}
