import { metresPerSecondPerKnot } from '../../../units/factors.ts';
import { crosswind, headwind } from '../../air/wind.ts';
import type { Aircraft } from '../../terms/aircraft.ts';
import type { Found, Grade, LimitSource, WithinWinds } from '../../terms/caution.ts';
import type { Flown, Minimums, SurfaceWind } from '../../terms/plan.ts';
import type { Examined } from './examined.ts';
import { leastMargin } from './speed-cautions.ts';

/**
 * m/s. The most tailwind, gusts counted, for an aircraft whose data give no limit. ICAO Doc 8168 (PANS-OPS), volume
 * I, noise abatement, 2.1.3, does not let a runway be chosen for its noise with more; that nobody lands with more is
 * common practice.
 */
export const usualTailwind = 5 * metresPerSecondPerKnot;

/**
 * m/s: the most tailwind that a landing is planned with: the aircraft's limit or the usual one, or the school's where
 * that is less.
 */
export function mostTailwind(limits: Aircraft['limits'], minimums: Minimums | undefined): number {
  return Math.min(limits.tailwind ?? usualTailwind, minimums?.mostTailwind ?? Number.POSITIVE_INFINITY);
}

/** Wind, crosswind and tailwind past their limits, and gusts that use up the margin of the approach speed. */
export function windCautions(examined: Examined): Found[] {
  return [...windLimits(examined), ...tailwind(examined), ...gusts(examined)];
}

/** The wind at its strongest, m/s. */
export function strongest({ surfaceWind, gust }: Pick<Flown, 'surfaceWind' | 'gust'>): SurfaceWind {
  return { ...surfaceWind, speed: Math.max(surfaceWind.speed, gust ?? 0) };
}

/** Whether gusts are what `strongest` gives. */
export const inGusts = ({ surfaceWind, gust = 0 }: Pick<Flown, 'surfaceWind' | 'gust'>) =>
  gust > surfaceWind.speed;

function windLimits(examined: Examined): Found[] {
  const { aircraft, runway, flown } = examined;
  const wind = strongest(flown);
  const across = Math.abs(crosswind(wind, runway.heading));
  const checks = [
    { code: 'wind-over-limit', value: wind.speed, limit: aircraft.limits.wind },
    { code: 'crosswind-over-limit', value: across, limit: aircraft.limits.crosswind },
  ] as const;
  return checks
    .filter(({ value, limit }) => value > limit + 1e-9)
    .map(({ code, value, limit }) => ({
      code,
      inGusts: inGusts(flown),
      value,
      limit,
      source: 'aircraft',
      remedy: withinTheLimits(examined),
    }));
}

function tailwind(examined: Examined): Found[] {
  const { runway, flown } = examined;
  const behind = -headwind(strongest(flown), runway.heading);
  const { limit, source, grade } = tailwindLimit(behind, examined);
  if (behind <= limit + 1e-9) return [];
  return [
    {
      code: 'tailwind',
      grade,
      inGusts: inGusts(flown),
      value: behind,
      limit,
      source,
      remedy: withinTheLimits(examined),
    },
  ];
}

/** The limit that a tailwind is compared with: the aircraft's own, or the usual one, or the school's where that is less. */
function tailwindLimit(
  behind: number,
  { aircraft, minimums }: Examined,
): { readonly limit: number; readonly source: LimitSource; readonly grade?: Grade | undefined } {
  const own = aircraft.limits.tailwind;
  const school = minimums?.mostTailwind;
  if (own !== undefined && (behind > own + 1e-9 || own <= (school ?? own)))
    return { limit: own, source: 'aircraft', grade: 'not-to-be-flown' };
  return school !== undefined && school < (own ?? usualTailwind) - 1e-9
    ? { limit: school, source: 'school-limit' }
    : { limit: usualTailwind, source: 'usual-tailwind' };
}

/** The strongest wind from the same direction that passes no limit. */
function withinTheLimits({ aircraft, runway, flown, minimums }: Examined): WithinWinds {
  const each = { ...flown.surfaceWind, speed: 1 };
  const across = Math.abs(crosswind(each, runway.heading));
  const behind = -headwind(each, runway.heading);
  const { limits } = aircraft;
  const mostBehind = mostTailwind(limits, minimums);
  const most = Math.min(
    limits.wind,
    across > 1e-9 ? limits.crosswind / across : Infinity,
    behind > 1e-9 ? mostBehind / behind : Infinity,
  );
  return { most };
}

/** The approach speed in gusts: the normal one plus half of what they are above the wind. */
export function speedInGusts(normal: number, overTheWind: number): number {
  return normal + overTheWind / 2;
}

/**
 * Gusts are allowed for by adding half of what they are above the wind to the normal approach speed (FAA-H-8083-3,
 * turbulent air approach and landing). Where the approach speed is not that much above 1.3 times the stall speed, a
 * lull uses up the margin.
 */
function gusts({ flown }: Examined): Found[] {
  const { surfaceWind, gust, approachSpeed, stallSpeed } = flown;
  const over = (gust ?? 0) - surfaceWind.speed;
  const value = (approachSpeed - speedInGusts(0, over)) / stallSpeed;
  if (over <= 0 || value >= leastMargin - 1e-9) return [];
  return [
    {
      code: 'gust',
      over,
      value,
      limit: leastMargin,
      source: 'gust-allowance',
      at: 'final',
      remedy: { eas: speedInGusts(leastMargin * stallSpeed, over) },
    },
  ];
}
