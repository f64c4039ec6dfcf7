/* The one place where what is held against the second implementation is called. */
import { RequestError } from '../../src/flight/errors.ts';
import type { Plan, PlanRequest } from '../../src/flight/plan.ts';
import { planApproach } from '../../src/flight/planner.ts';

/** The plan; undefined where the request is refused. */
export function planOf(request: PlanRequest): Plan | undefined {
  try {
    return planApproach(request);
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}
