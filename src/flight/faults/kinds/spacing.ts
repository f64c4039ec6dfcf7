import { approaches } from '../../approaches/approaches.ts';
import { baseLeg, stillAirLead } from '../../flying/pattern-legs.ts';
import type { Leg, TurnLeg } from '../../flying/procedure.ts';
import { changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import type { FaultPlan } from '../fault-plan.ts';
import { CannotFly, isDownwindLine, type Parts } from '../parts.ts';

export const spacing: FaultMethod<'spacing'> = {
  madeOn: 'downwind',
  make: (parts, { amount }, plan) => spaced(parts, changed(plan.asked.spacing, amount), plan),
};

function spaced(parts: Parts, spacing: number, plan: FaultPlan): Parts {
  const { side, spacing: planned, bank } = plan.asked;
  const { start, legs, resolved } = parts;
  if (!legs.some(isDownwindLine) || !approaches[plan.request.approach].hasOwnSpacing) {
    throw new CannotFly('no-downwind-distance');
  }
  if (!(spacing > 0)) throw new CannotFly('downwind-on-runway');
  const moved = { ...start, across: start.across + side * (spacing - planned) };
  const single = legs.findIndex((leg) => leg.kind === 'turn' && leg.phase === 'base-turn' && !leg.rollOut);
  if (single < 0 || spacing <= planned) return { ...parts, start: moved, legs };
  // Where the plan is one turn, a wide pattern leaves a base leg between two.
  const lead = stillAirLead(resolved.conditions, bank);
  const turn: Leg = { ...(legs[single] as TurnLeg), rollOut: true };
  const base = baseLeg(side, lead, plan.resolved.conditions);
  return {
    ...parts,
    start: moved,
    legs: [...legs.slice(0, single), turn, base, ...legs.slice(single + 1)],
  };
}
