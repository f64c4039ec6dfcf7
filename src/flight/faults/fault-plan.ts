import type { ApproachTask } from '../approaches/approach-method.ts';
import { endsAtSpot, type FlownPattern } from '../flying/fly-pattern.ts';
import type { Procedure } from '../flying/procedure.ts';
import { flyToSpot, workOut } from '../plan/planner.ts';
import type { Resolved } from '../plan/request.ts';
import { RequestError } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';

/** A planned approach, ready to be flown with something changed. */
export interface FaultPlan {
  readonly request: PlanRequest;
  readonly resolved: Resolved;
  readonly asked: ApproachTask;
  readonly procedure: Procedure;
  readonly pattern: FlownPattern;
}

/**
 * Plans the approach whose faults are to be flown. Throws RequestError for a request that cannot be flown, and where the
 * approach is not made: there is nothing to compare with.
 */
export function planForFaults(request: PlanRequest): FaultPlan {
  const worked = workOut(request);
  const { resolved, asked } = worked;
  const { solution, pattern } = flyToSpot(worked, request.runway.heading);
  const procedure = solution?.made ? solution.closed.procedure : undefined;
  if (!procedure || !endsAtSpot(pattern)) {
    throw new RequestError('approach', { code: 'plan-misses-spot' });
  }
  return { request, resolved, asked, procedure, pattern };
}
