import { type Amount, changed } from '../../terms/fault.ts';
import type { FaultMethod } from '../fault-method.ts';
import type { FaultPlan } from '../fault-plan.ts';
import { easeBank } from '../handling.ts';
import { CannotFly, type Parts } from '../parts.ts';

export const finalTurnBank: FaultMethod<'final-turn-bank'> = {
  madeOn: 'final-turn',
  make: (parts, { amount }, plan) => bankedToFinal(parts, amount, plan),
};

/** rad. */
const leastBank = (3 * Math.PI) / 180;

function bankedToFinal(parts: Parts, amount: Amount, plan: FaultPlan): Parts {
  const { legs } = parts;
  const place = legs.findIndex((leg) => leg.kind === 'turn' && leg.phase === 'final-turn');
  const turn = legs[place];
  if (turn?.kind !== 'turn') {
    throw new CannotFly('circle-to-final');
  }
  const bank = changed(turn.bank, amount);
  const { limit } = plan.resolved.conditions.aircraft.turns;
  if (!(bank >= leastBank && bank <= limit + 1e-9)) {
    throw new CannotFly('bank-out-of-range');
  }
  return {
    ...parts,
    linedUp: false,
    legs: [...legs.slice(0, place), easeBank(turn, bank), { ...turn, bank }, ...legs.slice(place + 1)],
  };
}
