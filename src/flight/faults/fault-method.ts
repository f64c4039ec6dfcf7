import type { FaultChange, FaultKind } from '../terms/fault.ts';
import type { FaultPlan } from './fault-plan.ts';
import type { Parts } from './parts.ts';

/** Where on the approach a fault is made: what comes before it is as planned, and no way of putting it right begins there. */
export type MadeOn = 'downwind' | 'base' | 'final-turn' | 'final' | 'landing';

/** A fault: where it is made, and what it does to the parts of an approach. One row of `list.ts`. */
export interface FaultMethod<Kind extends FaultKind> {
  readonly madeOn: MadeOn;
  /** Throws CannotFly where it cannot be made on this approach, and RequestError. */
  readonly make: (
    parts: Parts,
    change: Extract<FaultChange, { readonly kind: Kind }>,
    plan: FaultPlan,
  ) => Parts;
}
