import type { AircraftFile } from '../school/aircraft.ts';

/** The classes of aircraft, as an aircraft's file and a lesson name them. */
export const aircraftClasses = [
  'weight-shift',
  'three-axis',
  'powered-parachute',
  'glider',
] as const satisfies readonly AircraftFile['class'][];
