/* The one place that calls the code which is compared with the second implementation. */

import { planApproach } from '../../src/flight/plan/planner.ts';
import { RequestError } from '../../src/flight/terms/errors.ts';
import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';

/** The plan; undefined where the request is refused. */
export function planOf(request: PlanRequest): Plan | undefined {
  try {
    return planApproach(request);
  } catch (error) {
    if (error instanceof RequestError) return undefined;
    throw error;
  }
}
