import { type LandingLog, landingLegs } from '../flying/landing-legs.ts';
import { closeApproach } from '../flying/open-approach.ts';
import { joinFromBase } from '../flying/pattern-legs.ts';
import type { Leg, Procedure } from '../flying/procedure.ts';
import type { Resolved } from '../plan/request.ts';
import { RequestError } from '../terms/errors.ts';
import type { FaultChange, FaultKind, FaultRefusal } from '../terms/fault.ts';
import type { FaultMethod } from './fault-method.ts';
import type { FaultPlan } from './fault-plan.ts';
import { faultMethods } from './list.ts';
import { CannotFly, isBaseLine, type Parts } from './parts.ts';

/** An approach with something changed: the procedure, and what it is flown in. */
export interface ChangedApproach {
  readonly procedure: Procedure;
  readonly resolved: Resolved;
  /** Written as the procedure is flown. */
  readonly log: LandingLog;
}

/** Why there is no such approach. */
export interface NotChanged {
  readonly refused: FaultRefusal | RequestError;
}

/**
 * The planned approach with one thing changed, flown by a pilot who does not notice. What the change does not name is
 * done as planned: the base turn begins at its planned mark on the ground, banks and airspeeds are the planned ones, the
 * turn to final begins when it lines up with the centreline (the eye judges that every time; where the fault is in that
 * turn itself, it begins at the planned place), the round-out begins at its height with the pull that is level in time
 * (where the fault is in that height, with the planned pull).
 * A late throttle takes the count with it: the base turn begins as many seconds after closing as planned.
 * `heldOffAfresh`: whatever height the round-out leaves is held off. A string says why it cannot be flown.
 */
export function changedApproach(
  plan: FaultPlan,
  change: FaultChange,
  heldOffAfresh = false,
): ChangedApproach | NotChanged {
  try {
    const { make } = faultMethods[change.kind] as FaultMethod<FaultKind>;
    const parts = make(partsOf(plan), change, plan);
    const log: LandingLog = {};
    const landing = heldOffAfresh ? { ...parts.landing, comesDown: undefined } : parts.landing;
    const legs = [
      ...(parts.linedUp ? linedUp(parts, plan) : parts.legs.flatMap(parts.handled)),
      ...parts.final.flatMap(parts.handled),
      ...landingLegs(landing, plan.asked.pull, log),
    ];
    return { procedure: { start: parts.start, legs }, resolved: parts.resolved, log };
  } catch (error) {
    if (error instanceof CannotFly) return { refused: error.reason };
    if (error instanceof RequestError) return { refused: error };
    throw error;
  }
}

function partsOf({ procedure: { start, legs }, resolved }: FaultPlan): Parts {
  const toFinal = legs.findIndex((leg) => leg.kind === 'line' && leg.phase === 'final');
  return {
    start,
    legs: legs.slice(0, toFinal),
    final: legs.slice(toFinal).filter((leg) => leg.kind !== 'landing'),
    resolved,
    landing: {},
    linedUp: true,
    handled: (leg) => [leg],
  };
}

/** The turn to final begun where it ends on the centreline; the planned legs where there is no base leg to wait on. */
function linedUp({ start, legs, resolved, handled }: Parts, { asked }: FaultPlan): readonly Leg[] {
  const { side, bank } = asked;
  const { conditions } = resolved;
  const place = legs.findIndex(isBaseLine);
  const base = legs[place];
  if (!base || !isBaseLine(base)) return legs.flatMap(handled);
  const before = legs.slice(0, place).flatMap(handled);
  const after = legs.slice(place + 1).flatMap(handled);
  const waited = (lead: number): Leg[] => [
    ...handled({ ...base, until: { ...base.until, value: side * lead } }),
    ...after,
  ];
  const join = { ...joinFromBase(side, bank, conditions), legs: waited, guess: side * base.until.value };
  const found = closeApproach({ start, stages: [{ before, join }], after: [] }, conditions);
  return found ? found.procedure.legs : [...before, ...waited(join.guess)];
}
