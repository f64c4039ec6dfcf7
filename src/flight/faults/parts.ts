import type { LandingChange } from '../flying/landing-legs.ts';
import type { Leg, LineLeg, Start } from '../flying/procedure.ts';
import type { Resolved } from '../plan/request.ts';
import type { FaultRefusal } from '../terms/fault.ts';
import type { TrackSample } from '../terms/plan.ts';
import type { FaultPlan } from './fault-plan.ts';

/** The parts of an approach on which faults work. */
export interface Parts {
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
export class CannotFly extends Error {
  readonly reason: FaultRefusal;

  constructor(reason: FaultRefusal) {
    super(reason);
    this.reason = reason;
  }
}

type BaseLine = LineLeg & { readonly until: { readonly reaches: 'across'; readonly value: number } };

export function isBaseLine(leg: Leg): leg is BaseLine {
  return (
    leg.kind === 'line' && leg.phase === 'base' && 'reaches' in leg.until && leg.until.reaches === 'across'
  );
}

export const isDownwindLine = (leg: Leg): leg is LineLeg => leg.kind === 'line' && leg.phase === 'downwind';

/** s from the downwind key to the base turn, as planned. */
export function downwindSeconds({ pattern: { keys } }: FaultPlan): number {
  const at = (id: 'downwind-key' | 'base-turn') => keys.find((key) => key.id === id)?.time ?? Number.NaN;
  return at('base-turn') - at('downwind-key');
}

/** The base turn begun so many seconds after the downwind key. */
export function afterCount(parts: Parts, seconds: number): Parts {
  if (!parts.legs.some(isDownwindLine)) throw new CannotFly('no-base-turn');
  if (!(seconds >= 0)) throw new CannotFly('before-downwind-key');
  const counted = (leg: Leg): Leg => (isDownwindLine(leg) ? { ...leg, until: { lasts: seconds } } : leg);
  return { ...parts, legs: parts.legs.map(counted) };
}

/** Lines at other airspeeds. */
export function atSpeed(legs: readonly Leg[], eas: (planned: number) => number): Leg[] {
  return legs.map((leg) => (leg.kind === 'line' ? { ...leg, eas: eas(leg.eas) } : leg));
}

/** From wings level on final, at another height. */
export function fromFinal(parts: Parts, by: number, { pattern: { flight }, resolved }: FaultPlan): Parts {
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

/** Where the planned round-out is level. */
export function plannedLevel({ pattern: { flight } }: FaultPlan): TrackSample {
  return flight.track.findLast((sample) => sample.phase === 'round-out')!;
}
