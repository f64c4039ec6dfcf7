import type { PlanRequest } from '../../src/flight/terms/plan.ts';

export type Kind =
  | 'made'
  | 'not-made'
  | 'equations'
  | 'obstacle'
  | 'gate'
  | 'plan-outside-gates'
  | 'gate-of-height'
  | 'thrown';

/** Something that a plan says and this simulator contradicts. */
export interface Contradiction {
  readonly kind: Kind;
  /** One sentence, with its figures. */
  readonly says: string;
  /** By how much, m; for gates, of height. */
  readonly metres: number;
  readonly request: PlanRequest;
}

export const foot = 0.3048;

/** Feet to the tenth, for the sentences. */
export const feet = (metres: number) => `${(metres / foot).toFixed(1)} ft`;
export const metres = (value: number) => `${value.toFixed(2)} m`;
