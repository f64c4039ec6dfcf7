import { metresPerFoot, metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import type { Conditions } from '../flying/conditions.ts';
import { Flight } from '../flying/fly.ts';
import { landingLegs } from '../flying/landing-legs.ts';
import { ACROSS, ALONG } from '../flying/motions.ts';
import type { Leg, Procedure } from '../flying/procedure.ts';
import { normalFrom, randomFrom } from '../numerics/random.ts';
import { workOut } from '../plan/planner.ts';
import type { PlanRequest } from '../terms/plan.ts';

/**
 * How a flight differs from its plan while the pilot flies the plan's own places, banks and speeds: the glide ratio
 * as a share, winds along and across the runway (m/s, headwind and wind from the right positive), the spacing of the
 * downwind leg (m, wider positive), the bank of the turns (rad), a delay of the first turn (s).
 */
export interface Departure {
  readonly glideRatio: number;
  readonly headwind: number;
  readonly crosswind: number;
  readonly spacing: number;
  readonly bank: number;
  readonly delay: number;
}

export const asPlanned: Departure = {
  glideRatio: 0,
  headwind: 0,
  crosswind: 0,
  spacing: 0,
  bank: 0,
  delay: 0,
};

/** Where a flight ends, m from the spot. */
export interface Landed {
  readonly along: number;
  readonly across: number;
}

/** The departures of the sensitivity table: each alone, in either direction. */
const table: readonly { readonly name: string; readonly change: Partial<Departure> }[] = [
  { name: 'less-glide-ratio', change: { glideRatio: -0.1 } },
  { name: 'more-glide-ratio', change: { glideRatio: 0.1 } },
  { name: 'more-headwind', change: { headwind: 5 * metresPerSecondPerKnot } },
  { name: 'less-headwind', change: { headwind: -5 * metresPerSecondPerKnot } },
  { name: 'more-wind-from-the-right', change: { crosswind: 5 * metresPerSecondPerKnot } },
  { name: 'more-wind-from-the-left', change: { crosswind: -5 * metresPerSecondPerKnot } },
  { name: 'wider', change: { spacing: 100 } },
  { name: 'closer', change: { spacing: -100 } },
  { name: 'more-bank', change: { bank: 5 * radiansPerDegree } },
  { name: 'less-bank', change: { bank: -5 * radiansPerDegree } },
  { name: 'late', change: { delay: 3 } },
];

export interface SensitivityRow extends Landed {
  readonly name: string;
  readonly change: Partial<Departure>;
}

/**
 * Where the planned approach ends with one thing changed, among those it has: a 360 has no spacing. Throws
 * RequestError.
 */
export function sensitivity(request: PlanRequest): SensitivityRow[] {
  const { procedure, fly } = plannedFlight(request);
  const turns = procedure?.legs.some((leg) => leg.kind === 'turn') ?? false;
  const applies = ({ spacing, bank, delay }: Partial<Departure>) =>
    (!spacing || procedure?.start.across !== 0) && (!(bank || delay) || turns);
  return table
    .filter(({ change }) => applies(change))
    .map(({ name, change }) => ({ name, change, ...fly({ ...asPlanned, ...change }) }));
}

/**
 * Standard deviations for a careful pilot's day: half of what the table of sensitivities changes (common practice, no
 * source).
 */
export const usualSpread: Departure = {
  glideRatio: 0.05,
  headwind: 2.5 * metresPerSecondPerKnot,
  crosswind: 2.5 * metresPerSecondPerKnot,
  spacing: 50,
  bank: 2.5 * radiansPerDegree,
  delay: 1.5,
};

/** The results of many flights. m. */
export interface Scatter {
  readonly landed: readonly Landed[];
  /** Mean and standard deviation of the touchdown along the runway. */
  readonly mean: number;
  readonly deviation: number;
  /** Share of touchdowns within the standard: at the spot or up to 200 ft beyond it, none short. */
  readonly withinStandard: number;
}

/** m. Touch down within 200 ft beyond the spot and none short (FAA-S-ACS-7A, power-off 180 accuracy approach). */
const standard = 200 * metresPerFoot;

/**
 * Many flights of the planned approach, each with every departure drawn at random, normally distributed. The same seed
 * gives the same flights. Nobody corrects anything: it shows what judgement is for. Throws RequestError.
 */
export function monteCarlo(
  request: PlanRequest,
  flights: number,
  seed: number,
  spread: Departure = usualSpread,
): Scatter {
  const { fly } = plannedFlight(request);
  const normal = normalFrom(randomFrom(seed));
  const landed: Landed[] = [];
  let [sum, squares, within] = [0, 0, 0];
  for (let n = 0; n < flights; n++) {
    const end = fly({
      glideRatio: Math.max(-0.5, spread.glideRatio * normal()),
      headwind: spread.headwind * normal(),
      crosswind: spread.crosswind * normal(),
      spacing: spread.spacing * normal(),
      bank: spread.bank * normal(),
      delay: Math.abs(spread.delay * normal()),
    });
    landed.push(end);
    sum += end.along;
    squares += end.along * end.along;
    if (end.along >= 0 && end.along <= standard) within++;
  }
  const mean = sum / flights;
  return {
    landed,
    mean,
    deviation: Math.sqrt(Math.max(0, squares / flights - mean * mean)),
    withinStandard: within / flights,
  };
}

/** Finds the plan of a request, and gives a function that flies it with a departure. */
function plannedFlight(request: PlanRequest): {
  procedure: Procedure | undefined;
  fly: (departure: Departure) => Landed;
} {
  const { solution, resolved } = workOut(request);
  const procedure = solution?.closed.procedure;
  const { conditions } = resolved;
  const fly = (departure: Departure) => {
    if (!procedure) return { along: Number.NaN, across: Number.NaN };
    const { along, across } = flyUncorrected(
      departed(procedure, departure, conditions),
      windier(conditions, departure),
    );
    return { along, across };
  };
  return { procedure, fly };
}

/** Where a flight that nobody corrects ends, and whether that is on final or beyond it, before final, or never. */
export interface Uncorrected extends Landed {
  readonly ends: 'on-final' | 'before-final' | 'nowhere';
}

/** Flies a procedure to the ground with its marks, banks and speeds as they are; nobody corrects anything. */
export function flyUncorrected({ start, legs }: Procedure, conditions: Conditions): Uncorrected {
  const flight = new Flight(conditions, 0, 'honest');
  flight.begin(start, legs[0]!);
  let onFinal = false;
  for (const leg of legs) {
    onFinal ||= leg.kind === 'line' && leg.phase === 'final' && !flight.onGround;
    // The hands pull as hard as it takes to come level, as they do in every fault.
    for (const part of leg.kind === 'landing' ? landingLegs({}, leg.pull, {}) : [leg]) flight.leg(part);
  }
  return {
    along: flight.state[ALONG]!,
    across: flight.state[ACROSS]!,
    ends: !flight.flyable ? 'nowhere' : onFinal ? 'on-final' : 'before-final',
  };
}

function windier(conditions: Conditions, { glideRatio, headwind, crosswind }: Departure): Conditions {
  const { polar, wind } = conditions;
  return {
    ...conditions,
    polar: { ...polar, ratio: polar.ratio * (1 + glideRatio) },
    wind: (height, out) => {
      wind(height, out);
      out.along -= headwind;
      out.across -= crosswind;
    },
  };
}

/** The same procedure flown wider, with another bank, its first turn late. */
function departed(
  { start, legs }: Procedure,
  { spacing, bank, delay }: Departure,
  conditions: Conditions,
): Procedure {
  const { limit } = conditions.aircraft.turns;
  const side = Math.sign(start.across);
  const firstTurn = legs.findIndex((leg) => leg.kind === 'turn');
  const changed = legs.flatMap((leg, i): Leg[] => {
    if (leg.kind !== 'turn') return [leg];
    const turn = { ...leg, bank: Math.min(limit, Math.max(0.05, leg.bank + bank)) };
    const before = legs[i - 1];
    return delay > 0 && i === firstTurn && before?.kind === 'line'
      ? [{ ...before, until: { lasts: delay } }, turn]
      : [turn];
  });
  return { start: { ...start, across: start.across + side * spacing }, legs: changed };
}
