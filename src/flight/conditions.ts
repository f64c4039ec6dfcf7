import type { AirspeedFactor } from './air.ts';
import type { Aircraft } from './aircraft.ts';
import type { Polar } from './glide.ts';
import type { Medium } from './motions.ts';
import type { FieldAir } from './plan.ts';

/** Everything a flight is flown in and with, resolved for the mass of the day. SI, rad. */
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
