import type { AircraftClass } from './aircraft-class.ts';

/**
 * An aircraft as the core flies it. SI units and radians throughout; airspeeds are equivalent airspeeds.
 * Every speed and ratio holds at the reference mass, wings level, in still air.
 */
export interface Aircraft {
  readonly name: string;
  readonly class: AircraftClass;
  /** Default: two. Nothing is computed from it; with one seat, nobody can take over. */
  readonly seats?: number | undefined;
  /** Where the figures come from; printed under every table made from them. */
  readonly source: string;
  /** kg. Speeds hold at `reference`; the flight is flown at `flown`. `most` and `least` bound what may be flown. */
  readonly mass: {
    readonly reference: number;
    readonly flown: number;
    readonly most?: number | undefined;
    readonly least?: number | undefined;
  };
  /** m. `aboveWheels` is the height of the wing with the wheels on the ground. */
  readonly wing: { readonly span: number; readonly aboveWheels: number };
  /** m/s EAS. */
  readonly speeds: { readonly stall: number; readonly touchdown: number; readonly approach: number };
  readonly glide: { readonly idle: BestGlide; readonly stopped?: BestGlide | undefined };
  readonly steepApproach?: BestGlide | undefined;
  /** Where the flap is set at each speed, in the handbook's words. Nothing is computed from it. */
  readonly flap?: FlapWords | undefined;
  /** rad, rad, rad/s. `bank` is the bank planned for a turn, `limit` the most that the aircraft may be banked. */
  readonly turns: { readonly bank: number; readonly limit: number; readonly rollRate: number };
  /** Wheel height (m) at which the round-out begins, and the load factor of its pull. */
  readonly roundOut: { readonly height: number; readonly loadFactor: number };
  /** m, from touchdown to a stop: in a calm, standard air at sea level and at the reference mass (`landing-run.ts` scales it). */
  readonly landingRoll: number;
  /** m/s, surface wind and its components across the runway and, where the aircraft has such a limit, from behind. */
  readonly limits: {
    readonly wind: number;
    readonly crosswind: number;
    readonly tailwind?: number | undefined;
  };
  /** The pattern this aircraft flies, where it is not the airfield's. m. */
  readonly pattern?: Partial<Pattern> | undefined;
  /** Indicated against equivalent airspeed, for the page: all speeds here are equivalent. */
  readonly calibration?: readonly CalibrationRow[] | undefined;
}

/** A row of an aircraft's calibration table: what the airspeed indicator shows, and the equivalent airspeed. m/s. */
export interface CalibrationRow {
  readonly indicated: number;
  readonly equivalent: number;
}

/** A setting of the flap for each speed that has one. */
export interface FlapWords {
  readonly stall?: string | undefined;
  readonly touchdown?: string | undefined;
  readonly approach?: string | undefined;
  readonly glide?: string | undefined;
  readonly steepApproach?: string | undefined;
}

/** The engine's part in a glide: idling, or stopped. */
export type Power = 'idle' | 'stopped';

/** A measured best glide: the speed (m/s EAS) that goes farthest in still air, and the distance over height. */
export interface BestGlide {
  readonly speed: number;
  readonly ratio: number;
  /** m/s: how closely a polar fitted to measured points meets them. */
  readonly residual?: number | undefined;
}

/** The traffic pattern, above and beside the runway. m. */
export interface Pattern {
  readonly height: number;
  readonly spacing: number;
}
