/**
 * The computation core as other programs import it (`chalkwing/flight`); nothing in this house does. A request is in SI
 * units and radians, with directions true; `planToJson` gives the plan contract, angles in degrees.
 */

export { planToJson } from '../export/plan-json.ts';
export { planApproach } from '../flight/plan/planner.ts';
export type { Aircraft, BestGlide, Pattern, Power } from '../flight/terms/aircraft.ts';
export type { AircraftClass } from '../flight/terms/aircraft-class.ts';
export type { AircraftData } from '../flight/terms/aircraft-data.ts';
export type { Airfield, Circuit, Obstacle, Runway } from '../flight/terms/airfield.ts';
export type { Approach, ApproachOptions } from '../flight/terms/approach.ts';
export type {
  Caution,
  CautionCode,
  CautionOf,
  Grade,
  LimitSource,
  PlanGrade,
} from '../flight/terms/caution.ts';
export { RequestError } from '../flight/terms/errors.ts';
export type { KeyId } from '../flight/terms/key.ts';
export type {
  FieldAir,
  Flown,
  Gate,
  KeyPosition,
  Minimums,
  Phase,
  Plan,
  PlanRequest,
  RoundOutFigures,
  Solved,
  SurfaceWind,
  Touchdown,
  TrackSample,
  WindAtHeight,
  WindProfileKind,
} from '../flight/terms/plan.ts';
