import type { Plan, WindAtHeight } from '../terms/plan.ts';
import { type WindField, windAt, windField } from './wind.ts';

/**
 * The wind that a plan was flown in, by height; where it was given in layers, between the heights that the plan lists
 * as between layers.
 */
export function flownField({ flown, airfield, runway, wind }: Plan): WindField {
  const { windProfile: kind, surfaceWind } = flown;
  const { windExponent: exponent, windVeer: veer } = airfield;
  return windField(surfaceWind, { kind, exponent, veer, layers: wind }, runway.heading);
}

/** The wind of a plan at a height, m. */
export function flownWindAt(plan: Plan, height: number): WindAtHeight {
  return windAt(flownField(plan), height, plan.runway.heading);
}

/** rad: how far the wind of a flight turns clockwise from 10 m up to 1,000 ft; 0 where it does not, or there is none. */
export function flownVeer({ flown, airfield }: Pick<Plan, 'flown' | 'airfield'>): number {
  const turns = flown.windProfile === 'power' && flown.surfaceWind.speed > 0;
  return turns ? (airfield.windVeer ?? 0) : 0;
}
