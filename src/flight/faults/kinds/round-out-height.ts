import type { Leg } from '../../flying/procedure.ts';
import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import type { FaultPlan } from '../fault-plan.ts';
import { CannotFly, plannedLevel } from '../parts.ts';

export const roundOutHeight: FaultMethod<'round-out-height'> = {
  madeOn: 'landing',
  make: (parts, { amount }, plan) => {
    const height = changed(plan.resolved.conditions.aircraft.roundOut.height, amount);
    return {
      ...parts,
      final: downTo(parts.final, height, plan),
      landing: { pullAsPlanned: true, comesDown: plannedLevel(plan).height },
    };
  },
};

function downTo(final: readonly Leg[], height: number, { pattern: { keys } }: FaultPlan): Leg[] {
  const onFinal = keys.find((key) => key.id === 'final')?.height ?? 0;
  if (!(height > 0 && height < onFinal)) throw new CannotFly('round-out-off-final');
  return final.map((leg) =>
    leg.kind === 'line' && 'reaches' in leg.until ? { ...leg, until: { ...leg.until, value: height } } : leg,
  );
}
