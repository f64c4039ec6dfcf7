import type { AirspeedFactor } from '../air/air.ts';
import type { Polar } from '../aircraft/glide.ts';
import type { Aircraft } from '../terms/aircraft.ts';
import type { FieldAir } from '../terms/plan.ts';
import type { Medium } from './motions.ts';

/** Everything that a flight is flown in and with, resolved for the mass of the day. SI, rad. */
export interface Conditions extends Medium {
  readonly aircraft: Aircraft;
  readonly air: FieldAir;
  readonly tasOverEas: AirspeedFactor;
  /** The steep approach, where the aircraft has one. */
  readonly steep?: Polar | undefined;
  /** rad/s. */
  readonly rollRate: number;
  /** m/s EAS at the flown mass. */
  readonly speeds: { readonly approach: number; readonly touchdown: number; readonly stall: number };
}
