import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import type { FaultPlan } from '../fault-plan.ts';
import { CannotFly, plannedLevel } from '../parts.ts';

export const touchdownSpeed: FaultMethod<'touchdown-speed'> = {
  madeOn: 'landing',
  make: (parts, { amount }, plan) => {
    const { touchdown } = plan.resolved.conditions.speeds;
    return { ...parts, landing: { touchdownEas: touchdownAt(changed(touchdown, amount), plan) } };
  },
};

function touchdownAt(eas: number, plan: FaultPlan): number {
  if (eas < plan.resolved.conditions.speeds.stall) throw new CannotFly('under-stall-speed');
  if (eas > plannedLevel(plan).eas - 0.5) {
    throw new CannotFly('no-speed-left');
  }
  return eas;
}
