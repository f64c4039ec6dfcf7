import { approaches } from '../approaches/approaches.ts';
import { planApproach } from '../plan/planner.ts';
import type { ApproachOptions } from '../terms/approach.ts';
import type { Caution, CautionCode } from '../terms/caution.ts';
import { unlessRefused } from '../terms/errors.ts';
import type { KeyId } from '../terms/key.ts';
import type { Plan, PlanRequest } from '../terms/plan.ts';

/** A start from which an approach is sound, or what stands against every one. */
export type SoundStart =
  | {
      /** m above the spot at a key position: a whole number of the steps asked for. */
      readonly height: number;
      /** m: the highest height up to which every height tried is sound, where that is lower than the height asked for. */
      readonly upTo?: number | undefined;
      readonly at: KeyId;
      /** From there; for a spiral whose downwind key must be higher, the 180 that follows it. */
      readonly plan: Plan;
    }
  | {
      readonly height: undefined;
      /** The cautions of the flight that comes nearest to being sound; empty where nothing can be flown. */
      readonly against: readonly Caution[];
    };

/** m: the start heights that a request may ask for (`check-request.ts`). */
const heights = { lowest: 60, highest: 1500 };
/** Heights are first tried this many steps apart: a band of sound heights narrower than that may be missed. */
const stride = 10;

/** What follows from the wind, the mass and the runway alone: another start height does not change it. */
const whateverTheHeight: ReadonlySet<CautionCode> = new Set([
  'wind-over-limit',
  'crosswind-over-limit',
  'tailwind',
  'gust',
  'mass',
  'landing-distance',
]);

/** The spot made, and nothing in it graver than what is worth knowing. */
export function isSound({ made, grade }: Pick<Plan, 'made' | 'grade'>): boolean {
  return made && (grade === 'sound' || grade === 'worth-knowing');
}

/**
 * The least start height from which the approach of a request is sound, whatever height it asks for itself: the
 * downwind key of the 180, the base key of the 90 (its distance is then found), the top of the 360 and of the spiral.
 * Where a spiral ends in a 180 that is not sound, no height of its top helps, and it is the height at the downwind
 * key. A multiple of `step` m, so that it is flown as it is printed; found from below, `stride` steps at a time, then
 * by halving.
 */
export function leastSoundStart(request: PlanRequest, step: number): SoundStart {
  const { endsIn } = approaches[request.approach];
  if (endsIn === undefined) return leastOf(request, step);
  const half: PlanRequest = { ...request, approach: endsIn, height: undefined };
  const after = flyFrom(half, undefined);
  return leastOf(after && isSound(after) ? request : half, step);
}

function leastOf(request: PlanRequest, step: number): SoundStart {
  const asked: PlanRequest = { ...request, options: withoutStart(request), detail: 'flight' };
  const flown = (count: number) => flyFrom(asked, count * step);
  const last = Math.floor(heights.highest / step + 1e-9);
  let fails = Math.ceil(heights.lowest / step - 1e-9) - 1;
  let nearest: Plan | undefined;
  while (fails < last) {
    const next = Math.min(fails + stride, last);
    const plan = flown(next);
    if (plan && isSound(plan)) {
      const least = between(flown, fails, next, plan);
      const height = least.count * step;
      const upTo = topOf(flown, height, ownHeight(asked), step);
      return { height, at: least.plan.keys[0]!.id, plan: least.plan, upTo };
    }
    if (plan && (!nearest || standsAgainst(plan) < standsAgainst(nearest))) nearest = plan;
    if (plan && grave(plan).some(({ code }) => whateverTheHeight.has(code))) {
      return { height: undefined, against: grave(plan).filter(({ code }) => whateverTheHeight.has(code)) };
    }
    fails = next;
  }
  return { height: undefined, against: nearest ? grave(nearest) : [] };
}

/** What is asked of the approach alone, without anything that would fix its start as a height does. */
function withoutStart({ approach, options }: PlanRequest): ApproachOptions {
  const fixed: readonly string[] = approaches[approach].insteadOfHeight ?? [];
  const own = Object.entries(options?.[approach as keyof ApproachOptions] ?? {});
  return { ...options, [approach]: Object.fromEntries(own.filter(([name]) => !fixed.includes(name))) };
}

/** Undefined where nothing of it can be flown. */
function flyFrom(asked: PlanRequest, height: number | undefined): Plan | undefined {
  return unlessRefused(() => planApproach({ ...asked, height }));
}

/** The lowest of the counts between one that fails and one that is sound. */
function between(
  flown: (count: number) => Plan | undefined,
  below: number,
  above: number,
  sound: Plan,
): { readonly count: number; readonly plan: Plan } {
  let plan = sound;
  const works = lastSound(above, below, (count) => {
    const tried = flown(count);
    if (!tried || !isSound(tried)) return false;
    plan = tried;
    return true;
  });
  return { count: works, plan };
}

/** The last of the counts from one that is sound towards one that is not, by halving. */
function lastSound(from: number, towards: number, isSoundAt: (count: number) => boolean): number {
  let [works, fails] = [from, towards];
  while (Math.abs(fails - works) > 1) {
    const middle = (fails + works) >> 1;
    if (isSoundAt(middle)) works = middle;
    else fails = middle;
  }
  return works;
}

/** Heights between two sound ones are tried this many steps apart on the way up to the height asked for. */
const upStride = 3;

/**
 * How far up from the least sound height all are sound, m, where the height asked for is above it: what is in the way
 * there (an obstacle) is passed by starting lower. Undefined where the height asked for is below it, or all are sound
 * up to it.
 */
function topOf(
  flown: (count: number) => Plan | undefined,
  least: number,
  own: number | undefined,
  step: number,
): number | undefined {
  const isSoundAt = (count: number) => {
    const plan = flown(count);
    return plan !== undefined && isSound(plan);
  };
  if (own === undefined || own <= least) return undefined;
  let works = Math.round(least / step);
  const last = Math.ceil(own / step - 1e-9);
  while (works < last) {
    const next = Math.min(works + upStride, last);
    if (!isSoundAt(next)) return lastSound(works, next, isSoundAt) * step;
    works = next;
  }
  return undefined;
}

/** m: the start height that the request names, or leaves to the approach. */
function ownHeight(asked: PlanRequest): number | undefined {
  return asked.height ?? flyFrom(asked, undefined)?.keys[0]?.height;
}

/** What keeps a flight from being sound. */
function grave({ cautions }: Plan): readonly Caution[] {
  return cautions.filter(({ grade }) => grade !== 'worth-knowing');
}

/** How much speaks against a flight: what is not to be flown weighs more than any number of limits passed. */
function standsAgainst(plan: Plan): number {
  return grave(plan).reduce((sum, { grade }) => sum + (grade === 'not-to-be-flown' ? 100 : 1), 0);
}
