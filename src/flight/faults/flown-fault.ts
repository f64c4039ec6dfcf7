import type { FaultChange, FaultFlight, FaultRecovery } from '../terms/fault.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { type FaultPlan, planForFaults } from './fault-plan.ts';
import { flyFault } from './fly-fault.ts';
import { recoverFault } from './recover-fault.ts';

/** A fault as flown for a packet. */
export interface FlownFault {
  readonly flight: FaultFlight;
  /** What it was changed from. */
  readonly plan: FaultPlan;
  /** The last places from which each way still puts it right: found when first asked for, which costs far more than the flight. */
  recoveries(): readonly FaultRecovery[];
  /** The same by a pilot who sees a round-out that ends too high, and holds off afresh from there. */
  heldOffAfresh(): FaultFlight;
}

interface Flown {
  readonly plan: FaultPlan;
  readonly faults: Map<string, FlownFault>;
}

/** Lessons of one school fly the same few faults of the same few plans: each is flown once. */
const plans = new Map<string, Flown>();
const mostPlans = 24;

/** Flies a fault of a plan that makes the spot. Throws RequestError where the plan does not. */
export function flownFault(change: FaultChange, request: PlanRequest): FlownFault {
  const { plan, faults } = flownFor(request);
  const name = JSON.stringify(change);
  const known = faults.get(name);
  if (known) return known;
  const flight = flyFault(plan, change);
  let found: readonly FaultRecovery[] | undefined;
  const recoveries = () => {
    found ??= flight.flown ? recoverFault(plan, flight) : [];
    return found;
  };
  const fault = { flight, plan, recoveries, heldOffAfresh: () => flyFault(plan, change, 'noticed') };
  faults.set(name, fault);
  return fault;
}

function flownFor(request: PlanRequest): Flown {
  const key = JSON.stringify(request);
  const known = plans.get(key);
  if (known) return known;
  const flown: Flown = { plan: planForFaults(request), faults: new Map() };
  const [oldest] = plans.keys();
  if (plans.size >= mostPlans && oldest !== undefined) plans.delete(oldest);
  plans.set(key, flown);
  return flown;
}
