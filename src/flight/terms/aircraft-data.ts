import type { Aircraft, BestGlide, CalibrationRow } from './aircraft.ts';

/**
 * An aircraft as its owner describes it: airspeeds as its indicator shows them, a glide as a best glide or as
 * measured points. SI units and radians.
 */
export interface AircraftData extends Omit<Aircraft, 'glide'> {
  readonly glide: { readonly idle: GivenGlide; readonly stopped?: GivenGlide | undefined };
  /** Indicated against equivalent airspeed; left out, they are the same. */
  readonly calibration?: readonly CalibrationRow[] | undefined;
}

/** A best glide, or three or more measured points that a polar is fitted to. */
export type GivenGlide =
  | (BestGlide & { readonly points?: undefined })
  | { readonly points: readonly SinkPoint[] };

/** A measured point of a glide, wings level, in still air: m/s EAS and m/s of sink, brought to sea level. */
export interface SinkPoint {
  readonly speed: number;
  readonly sink: number;
}
