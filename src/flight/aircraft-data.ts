import type { Aircraft, BestGlide } from './aircraft.ts';
import { type CalibrationRow, checkCalibration, noCalibration, toEquivalent } from './calibration.ts';
import { fitPolar, type SinkPoint } from './polar-fit.ts';

/**
 * An aircraft as its owner gives it: airspeeds as its indicator shows them, a glide as a best glide or as measured
 * points. SI units and radians.
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

/** The aircraft as the core flies it: polars fitted, every airspeed equivalent. Throws RequestError. */
export function resolveAircraft(data: AircraftData): Aircraft {
  const table = data.calibration ?? noCalibration;
  checkCalibration(table);
  const eas = (speed: number) => toEquivalent(speed, table);
  const glide = (given: GivenGlide, field: string): BestGlide => {
    if (!given.points) return { ...given, speed: eas(given.speed) };
    const points = given.points.map(({ speed, sink }) => ({ speed: eas(speed), sink }));
    return fitPolar(points, `aircraft.glide.${field}.points`);
  };
  const { idle, stopped } = data.glide;
  const { stall, touchdown, approach } = data.speeds;
  return {
    ...data,
    speeds: { stall: eas(stall), touchdown: eas(touchdown), approach: eas(approach) },
    glide: { idle: glide(idle, 'idle'), stopped: stopped && glide(stopped, 'stopped') },
    steepApproach: data.steepApproach && glide(data.steepApproach, 'steep-approach'),
  };
}
