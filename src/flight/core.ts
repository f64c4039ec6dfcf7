/**
 * The computation core as other programs import it (`chalkwing/flight`); nothing in this house does. A request is in SI
 * units and radians, with directions true; `planToJson` gives the plan contract, angles in degrees.
 */

export type { Aircraft, AircraftClass, BestGlide, Pattern, Power } from './aircraft.ts';
export type { AircraftData } from './aircraft-data.ts';
export type { Airfield, Circuit, Obstacle, Runway } from './airfield.ts';
export { RequestError } from './errors.ts';
export type {
  Approach,
  Caution,
  CautionCode,
  FieldAir,
  Flown,
  Gate,
  Grade,
  KeyId,
  KeyPosition,
  Minimums,
  Phase,
  Plan,
  PlanGrade,
  PlanRequest,
  RoundOutFigures,
  Solved,
  SurfaceWind,
  Touchdown,
  TrackSample,
  WindAtHeight,
  WindProfileKind,
} from './plan.ts';
export { planToJson } from './plan-json.ts';
export { planApproach } from './planner.ts';
