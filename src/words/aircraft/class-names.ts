import type { AircraftClass } from '../../flight/terms/aircraft-class.ts';

/** What a class of aircraft is called on the page. */
export const classNames: Readonly<Record<AircraftClass, string>> = {
  'weight-shift': 'weight-shift',
  'three-axis': 'three-axis',
  'powered-parachute': 'powered parachute',
  glider: 'glider',
};
