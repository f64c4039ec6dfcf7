import { metresPerFoot } from '../../units/factors.ts';
import { speedToFly } from '../aircraft/speed-to-fly.ts';
import type { ApproachTask } from '../approaches/approach-method.ts';
import type { Conditions } from '../flying/conditions.ts';
import { headwindAt } from '../flying/headwind-at.ts';
import {
  type ClosedApproach,
  closeApproach,
  type OpenApproach,
  type Stage,
} from '../flying/open-approach.ts';
import { baseLeg, finalLegs, stillAirLead } from '../flying/pattern-legs.ts';
import type { Leg, LineLeg, Side, TurnLeg } from '../flying/procedure.ts';
import { rootInBracket } from '../numerics/root.ts';
import { cosine } from '../numerics/steady-math.ts';

/** m. The turn to final is complete at least this high (FAA-H-8083-3A, chapter 8; FAA-H-8083-5, chapter 11). */
export const soundFinal = 300 * metresPerFoot;
/** rad: the most that an S-turn leaves final by, and that a base leg is turned out by. */
export const eighth = Math.PI / 4;
/** m. The steep approach ends here, to come back to the approach speed before the round-out (common practice, no source). */
export const steepUntil = 150 * metresPerFoot;

/** How far before the touchdown a height on final, wings level at the glide speed, is: m of ground, by height in m. */
export interface FinalBand {
  /** The farthest: at the speed that goes farthest in this wind. */
  readonly farthest: (height: number) => number;
  /** The nearest: by the steep approach, after an S-turn where there is still room for one. */
  readonly nearest: (height: number) => number;
  /** By the steep approach alone. */
  readonly straight: (height: number) => number;
}

/** What a final is flown with. */
export type OfFinal = Pick<ApproachTask, 'side' | 'bank' | 'pull' | 'leastFinal'>;

/**
 * m: spacing of the heights at which final is flown; those where what may be flown changes are among them; between
 * them it is a straight line.
 */
const apart = 50 * metresPerFoot;

/** What was last asked about a final in these conditions. */
const bands = new WeakMap<Conditions, OfFinal & { readonly band: FinalBand }>();

/**
 * How much ground a final can make of a height. Each height looked at is flown once and kept. NaN where the wind
 * allows no final.
 */
export function finalBand({ side, bank, pull, leastFinal }: OfFinal, conditions: Conditions): FinalBand {
  const kept = bands.get(conditions);
  if (kept?.side === side && kept.bank === bank && kept.pull === pull && kept.leastFinal === leastFinal)
    return kept.band;
  const asked = { side, bank, pull, leastFinal };
  const band = newBand(asked, conditions);
  bands.set(conditions, { ...asked, band });
  return band;
}

function newBand(asked: OfFinal, conditions: Conditions): FinalBand {
  // A steep approach is fast: into a strong wind the slower approach speed comes down in less ground.
  const straight = between((height) =>
    Math.min(
      covered(height, steepest(asked, conditions), conditions),
      covered(height, landingFrom(asked, conditions), conditions),
    ),
  );
  return {
    farthest: between((height) => farthestFrom(height, asked, conditions)),
    nearest: between((height) =>
      Math.min(
        straight(height),
        sTurnCovers(height, straight, asked, conditions) ?? Number.POSITIVE_INFINITY,
      ),
    ),
    straight,
  };
}

/** A function of height, flown at round heights only, with a straight line between them. */
function between(flown: (height: number) => number): (height: number) => number {
  const known = new Map<number, number>();
  const at = (step: number) => {
    const kept = known.get(step) ?? flown(step * apart);
    known.set(step, kept);
    return kept;
  };
  return (height) => {
    const step = Math.max(1, Math.floor(height / apart));
    const share = height / apart - step;
    return at(step) + share * (at(step + 1) - at(step));
  };
}

/**
 * The speed, m/s EAS, that goes farthest over the ground from a height on final, and no less than 1.3 times the stall
 * speed.
 */
export function bestOnFinal(height: number, conditions: Conditions): number {
  const headwind = headwindAt(conditions, height / 2);
  const best = speedToFly(conditions.polar, headwind, conditions.tasOverEas(height / 2));
  return Math.max(best, 1.3 * conditions.speeds.stall);
}

function farthestFrom(height: number, { pull }: OfFinal, conditions: Conditions): number {
  const landing = landingFrom({ pull }, conditions);
  const plain = covered(height, landing, conditions);
  if (height <= steepUntil) return plain;
  return Math.max(
    plain,
    covered(height, [finalLine(steepUntil, bestOnFinal(height, conditions)), ...landing], conditions),
  );
}

/**
 * m of ground that the shorter of the S-turns to either side covers from a height on final to the touchdown, followed
 * by what covers least (`straight`). Undefined where neither is complete by the least height of a turn to final.
 */
export function sTurnCovers(
  height: number,
  straight: FinalBand['straight'],
  asked: OfFinal,
  conditions: Conditions,
): number | undefined {
  if (height <= asked.leastFinal) return undefined;
  const found = ([1, -1] as const).flatMap((side) => {
    const weave = widestWeave(height, side, asked, conditions);
    return weave ? weave.along + straight(weave.height) : [];
  });
  return found.length > 0 ? Math.min(...found) : undefined;
}

/** What covers least ground from a height on final: the aircraft's steep approach, where it has one. */
export function steepest({ pull }: Pick<ApproachTask, 'pull'>, conditions: Conditions): Leg[] {
  const { steep } = conditions;
  const descent: Leg[] = steep ? [{ ...finalLine(steepUntil, steep.speed), steep: true }] : [];
  return [...descent, ...landingFrom({ pull }, conditions)];
}

/** The last part of final and the landing, pulled as planned, or as hard as the speed that is left over needs. */
export function landingFrom({ pull }: Pick<ApproachTask, 'pull'>, conditions: Conditions): Leg[] {
  return finalLegs(conditions, pull).map((leg) => (leg.kind === 'landing' ? { ...leg, firmer: true } : leg));
}

/** m of ground that legs of final cover from a height. */
function covered(height: number, legs: readonly Leg[], conditions: Conditions): number {
  return flown({ start: onFinal(height, conditions), stages: [{ before: [] }], after: legs }, conditions);
}

const onFinal = (height: number, { polar }: Conditions) => ({
  along: 0,
  across: 0,
  height,
  eas: polar.speed,
});

const flown = (path: OpenApproach, conditions: Conditions) =>
  closeApproach(path, conditions)?.miss ?? Number.NaN;

/**
 * An S-turn from a height, as wide as can be completed by the least height of a turn to final, 45 degrees at most:
 * the ground that it covers, and the height that it ends at. Undefined where there is none.
 */
function widestWeave(
  height: number,
  side: Side,
  asked: OfFinal,
  conditions: Conditions,
): { along: number; height: number } | undefined {
  const start = onFinal(height, conditions);
  let path: ClosedApproach | undefined;
  const spare = (angle: number) => {
    const stages = [{ before: [] }, sTurn(side, angle, asked.bank, conditions)];
    path = closeApproach({ start, stages, after: [] }, conditions);
    return path ? path.heights[1]! - asked.leastFinal : Number.NaN;
  };
  const isWhole = spare(eighth) >= 0;
  if (!isWhole && rootInBracket(spare, [leastWeave, eighth], 0.05) === undefined) return undefined;
  return path?.sound ? { along: path.miss, height: path.heights[1]! } : undefined;
}

/** rad. A smaller S-turn does not count as one. */
const leastWeave = Math.PI / 36;

/** Off final by an angle (rad), across it by as much the other way, and back on to it. */
export function sTurn(side: Side, angle: number, bank: number, conditions: Conditions): Stage {
  const out: TurnLeg = { kind: 'turn', phase: 'final', track: side * angle, side, bank, rollOut: true };
  const back: TurnLeg = { ...out, track: -side * angle, side: side === 1 ? -1 : 1 };
  return {
    before: [out, back],
    join: {
      legs: (lead) => [
        { ...baseLeg(side, lead, conditions, -side * angle), phase: 'final' },
        { ...out, track: 0 },
      ],
      guess: stillAirLead(conditions, bank) * (1 - cosine(angle)),
      slope: side,
    },
  };
}

export function finalLine(until: number, eas: number): LineLeg {
  return {
    kind: 'line',
    phase: 'final',
    track: 0,
    until: { reaches: 'height', value: until, growing: -1 },
    eas,
  };
}
