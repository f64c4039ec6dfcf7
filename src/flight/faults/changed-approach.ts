import type { ApproachTask } from '../approaches/approach-method.ts';
import { approaches } from '../approaches/approaches.ts';
import { endsAtSpot, type FlownPattern } from '../flying/fly-pattern.ts';
import { type LandingChange, type LandingLog, landingLegs } from '../flying/landing-legs.ts';
import { closeApproach } from '../flying/open-approach.ts';
import { baseLeg, joinFromBase, stillAirLead } from '../flying/pattern-legs.ts';
import type { Leg, LineLeg, Procedure, Start, TurnLeg } from '../flying/procedure.ts';
import { flyToSpot, workOut } from '../plan/planner.ts';
import { type Resolved, resolveRequest } from '../plan/request.ts';
import { RequestError } from '../terms/errors.ts';
import { type Amount, changed, type FaultChange, type FaultRefusal } from '../terms/fault.ts';
import type { PlanRequest, TrackSample } from '../terms/plan.ts';
import { heightForPlace } from './dive-for-aim-point.ts';
import { easeBank, headingLeg, headingTurn, levelLeg, wanderingLegs } from './handling.ts';

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

/** The parts of an approach on which faults work. */
interface Parts {
  readonly start: Start;
  /** From the start to wings level on final. */
  readonly legs: readonly Leg[];
  readonly final: readonly Leg[];
  readonly resolved: Resolved;
  readonly landing: LandingChange;
  /** True where the pilot begins the turn to final when it will end on the centreline, as seen; else at the planned place. */
  readonly linedUp: boolean;
  /** How each leg is handled. */
  readonly handled: (leg: Leg) => readonly Leg[];
}

/** A fault that is not flown on this approach. */
class CannotFly extends Error {
  readonly reason: FaultRefusal;

  constructor(reason: FaultRefusal) {
    super(reason);
    this.reason = reason;
  }
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
    const parts = withChange(partsOf(plan), change, plan);
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

function withChange(parts: Parts, change: FaultChange, plan: FaultPlan): Parts {
  const { request, resolved } = plan;
  const { aircraft, speeds } = resolved.conditions;
  switch (change.kind) {
    case 'spacing':
      return spaced(parts, changed(plan.asked.spacing, change.amount), plan);
    case 'base-turn':
      return afterCount(parts, downwindSeconds(plan) + change.seconds);
    case 'base-turn-as-in-still-air':
      return afterCount(parts, downwindSeconds(planForFaults(inStillAir(request))));
    case 'wind':
      return { ...parts, resolved: resolveRequest(windier(request, change.amount)) };
    case 'base-drift':
      return { ...parts, handled: noseSquareOnBase(parts) };
    case 'glide-speed':
      return faster(parts, change.factor);
    case 'glide-speed-wandering':
      return { ...parts, handled: (leg) => wanderingLegs(leg, change) };
    case 'final-turn-bank':
      return bankedToFinal(parts, change.amount, plan);
    case 'throttle':
      return throttleLate(parts, change.seconds, plan);
    case 'start-speed':
      return startedAt(parts, changed(parts.start.eas, change.amount));
    case 'mass':
      return {
        ...parts,
        resolved: resolveRequest({ ...request, mass: changed(resolved.flown.mass, change.amount) }),
      };
    case 'power-stopped':
      if (request.power === 'stopped') throw new CannotFly('already-stopped');
      return { ...parts, resolved: resolveRequest({ ...request, power: 'stopped' }) };
    case 'final-speed':
      return { ...parts, final: atSpeed(parts.final, () => changed(speeds.approach, change.amount)) };
    case 'final-height':
      return fromFinal(parts, change.by, plan);
    case 'round-out-speed':
      return divedForTheAimPoint(parts, changed(speeds.approach, change.amount), plan);
    case 'round-out-height': {
      const height = changed(aircraft.roundOut.height, change.amount);
      return {
        ...parts,
        final: downTo(parts.final, height, plan),
        landing: { pullAsPlanned: true, comesDown: plannedLevel(plan).height },
      };
    }
    case 'round-out-load-factor': {
      const pull = changed(plan.asked.pull, change.amount);
      if (pull < 1.02) throw new CannotFly('pull-too-weak');
      return { ...parts, landing: { pull, comesDown: plannedLevel(plan).height } };
    }
    case 'touchdown-speed':
      return {
        ...parts,
        landing: { touchdownEas: touchdownAt(changed(speeds.touchdown, change.amount), plan) },
      };
    case 'touchdown-drift':
      return { ...parts, landing: { noseStraight: true } };
  }
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

type BaseLine = LineLeg & { readonly until: { readonly reaches: 'across'; readonly value: number } };

function isBaseLine(leg: Leg): leg is BaseLine {
  return (
    leg.kind === 'line' && leg.phase === 'base' && 'reaches' in leg.until && leg.until.reaches === 'across'
  );
}

const isDownwindLine = (leg: Leg): leg is LineLeg => leg.kind === 'line' && leg.phase === 'downwind';

/** s from the downwind key to the base turn, as planned. */
function downwindSeconds({ pattern: { keys } }: FaultPlan): number {
  const at = (id: 'downwind-key' | 'base-turn') => keys.find((key) => key.id === id)?.time ?? Number.NaN;
  return at('base-turn') - at('downwind-key');
}

function afterCount(parts: Parts, seconds: number): Parts {
  if (!parts.legs.some(isDownwindLine)) throw new CannotFly('no-base-turn');
  if (!(seconds >= 0)) throw new CannotFly('before-downwind-key');
  const counted = (leg: Leg): Leg => (isDownwindLine(leg) ? { ...leg, until: { lasts: seconds } } : leg);
  return { ...parts, legs: parts.legs.map(counted) };
}

function inStillAir(request: PlanRequest): PlanRequest {
  return {
    ...request,
    wind: { from: request.wind.from, speed: 0 },
    gust: undefined,
    windProfile: undefined,
    windLayers: undefined,
  };
}

/** The wind of a calm day would be on the nose of final. */
function windier(request: PlanRequest, amount: Amount): PlanRequest {
  const { from, speed } = request.wind;
  const now = changed(speed, amount);
  if (now < 0) throw new CannotFly('too-little-wind');
  const share: Amount = 'to' in amount ? (speed > 0 ? { factor: now / speed } : { by: now }) : amount;
  return {
    ...request,
    wind: { from: speed > 0 ? from : request.runway.heading, speed: now },
    gust: request.gust === undefined ? undefined : Math.max(request.gust, now),
    windLayers: request.windLayers?.map((layer) => ({
      ...layer,
      speed: Math.max(0, changed(layer.speed, share)),
    })),
  };
}

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

function noseSquareOnBase({ legs }: Parts): Parts['handled'] {
  if (!legs.some(isBaseLine)) throw new CannotFly('no-base-leg');
  return (leg) => {
    if (isBaseLine(leg)) return [headingLeg(leg)];
    return leg.kind === 'turn' && leg.phase === 'base-turn' ? headingTurn(leg) : [leg];
  };
}

function atSpeed(legs: readonly Leg[], eas: (planned: number) => number): Leg[] {
  return legs.map((leg) => (leg.kind === 'line' ? { ...leg, eas: eas(leg.eas) } : leg));
}

function faster(parts: Parts, factor: number): Parts {
  const eas = (planned: number) => planned * factor;
  return {
    ...parts,
    start: { ...parts.start, eas: eas(parts.start.eas) },
    legs: atSpeed(parts.legs, eas),
    final: atSpeed(parts.final, eas),
  };
}

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

/** rad. */
const leastBank = (3 * Math.PI) / 180;

function throttleLate(parts: Parts, seconds: number, plan: FaultPlan): Parts {
  if (seconds < 0) throw new CannotFly('throttle-early');
  const counted = parts.legs.some(isDownwindLine) ? afterCount(parts, downwindSeconds(plan)) : parts;
  const first = counted.legs[0]!;
  if (first.kind === 'landing') throw new CannotFly('nothing-before-landing');
  const track = first.kind === 'circle' ? first.from : (parts.start.heading ?? first.track);
  return { ...counted, legs: [levelLeg(track, seconds, first.phase), ...counted.legs] };
}

function startedAt(parts: Parts, eas: number): Parts {
  if (parts.legs[0]?.kind !== 'line') {
    throw new CannotFly('begins-in-circle');
  }
  return { ...parts, start: { ...parts.start, eas } };
}

/** From wings level on final, at another height. */
function fromFinal(parts: Parts, by: number, { pattern: { flight }, resolved }: FaultPlan): Parts {
  const key = flight.track.findLast((sample) => sample.phase === 'final-turn');
  if (!key) throw new CannotFly('no-turn-to-final');
  const height = key.height + by;
  if (height <= resolved.conditions.aircraft.roundOut.height) {
    throw new CannotFly('no-final-left');
  }
  return {
    ...parts,
    start: { along: key.along, across: key.across, height, eas: key.eas },
    legs: [],
    linedUp: false,
  };
}

/** Final at another speed, from the height that brings it to the planned place of the round-out. */
function divedForTheAimPoint(parts: Parts, eas: number, plan: FaultPlan): Parts {
  const { track } = plan.pattern.flight;
  const final = atSpeed(parts.final, () => eas);
  const [from, to] = [
    track.findLast(({ phase }) => phase === 'final-turn'),
    track.findLast(({ phase }) => phase === 'final'),
  ];
  const by = from && to && heightForPlace(final, from, to, plan.resolved.conditions);
  if (by === undefined) throw new CannotFly('no-height-for-speed');
  return fromFinal({ ...parts, final }, by, plan);
}

function downTo(final: readonly Leg[], height: number, { pattern: { keys } }: FaultPlan): Leg[] {
  const onFinal = keys.find((key) => key.id === 'final')?.height ?? 0;
  if (!(height > 0 && height < onFinal)) throw new CannotFly('round-out-off-final');
  return final.map((leg) =>
    leg.kind === 'line' && 'reaches' in leg.until ? { ...leg, until: { ...leg.until, value: height } } : leg,
  );
}

/** Where the planned round-out is level. */
function plannedLevel({ pattern: { flight } }: FaultPlan): TrackSample {
  return flight.track.findLast((sample) => sample.phase === 'round-out')!;
}

function touchdownAt(eas: number, plan: FaultPlan): number {
  if (eas < plan.resolved.conditions.speeds.stall) throw new CannotFly('under-stall-speed');
  if (eas > plannedLevel(plan).eas - 0.5) {
    throw new CannotFly('no-speed-left');
  }
  return eas;
}
