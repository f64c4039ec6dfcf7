import type { Aircraft, BestGlide } from '../terms/aircraft.ts';
import type { AircraftData, GivenGlide } from '../terms/aircraft-data.ts';
import { checkCalibration, noCalibration, toEquivalent } from './calibration.ts';
import { fitPolar } from './polar-fit.ts';

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
