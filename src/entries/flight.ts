/**
 * The computation core as other programs import it (`chalkwing/flight`); nothing in this house does. A request is in SI
 * units and radians, with directions true; `planToJson` gives the plan contract, angles in degrees.
 */

export { planToJson } from '../export/plan-json.ts';
export { planApproach } from '../flight/plan/planner.ts';
export type {
  Aircraft,
  BestGlide,
  CalibrationRow,
  FlapWords,
  Pattern,
  Power,
} from '../flight/terms/aircraft.ts';
export type { AircraftClass } from '../flight/terms/aircraft-class.ts';
export type { AircraftData, GivenGlide, SinkPoint } from '../flight/terms/aircraft-data.ts';
export type { Airfield, Circuit, Obstacle, Runway } from '../flight/terms/airfield.ts';
export type { Approach, ApproachOptions, HeightOption, SolvedName } from '../flight/terms/approach.ts';
export type {
  Caution,
  CautionCode,
  CautionFacts,
  CautionOf,
  Grade,
  Judged,
  LimitSource,
  MovedSpot,
  PlanGrade,
  RunwayTooShort,
  WithinWinds,
} from '../flight/terms/caution.ts';
export { type RangeOf, RequestError, type RequestReason } from '../flight/terms/errors.ts';
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
  Steps,
  SurfaceWind,
  Touchdown,
  TrackSample,
  WindAtHeight,
  WindProfileKind,
} from '../flight/terms/plan.ts';
