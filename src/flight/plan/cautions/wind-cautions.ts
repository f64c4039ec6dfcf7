import { metresPerSecondPerKnot } from '../../../units/factors.ts';
import { roundDownTo, roundUpTo } from '../../../units/rounding.ts';
import { crosswind, headwind } from '../../air/wind.ts';
import { indicatedSpeed } from '../../aircraft/calibration.ts';
import type { Aircraft } from '../../terms/aircraft.ts';
import type { Flown, Minimums, SurfaceWind } from '../../terms/plan.ts';
import { dataOf, type Examined, type Found, handbook, told } from './examined.ts';
import { leastMargin } from './speed-cautions.ts';

/**
 * m/s. The most tailwind, gusts counted, of an aircraft whose data give no limit. ICAO Doc 8168 (PANS-OPS), volume I, noise
 * abatement, 2.1.3, lets no runway be chosen for its noise with more; that nobody lands with more is common practice.
 */
export const usualTailwind = 5 * metresPerSecondPerKnot;

/** m/s: the most tailwind that a landing is planned with: the aircraft's limit or the usual one, or the school's that is less. */
export function mostTailwind(limits: Aircraft['limits'], minimums: Minimums | undefined): number {
  return Math.min(limits.tailwind ?? usualTailwind, minimums?.mostTailwind ?? Number.POSITIVE_INFINITY);
}

/** Wind, crosswind and tailwind past their limits, and gusts that take the margin of the approach speed. */
export function windCautions(examined: Examined): Found[] {
  return [...windLimits(examined), ...tailwind(examined), ...gusts(examined)];
}

/** The wind at its strongest, m/s. */
export function strongest({ surfaceWind, gust }: Pick<Flown, 'surfaceWind' | 'gust'>): SurfaceWind {
  return { ...surfaceWind, speed: Math.max(surfaceWind.speed, gust ?? 0) };
}

/** Behind the wind that `strongest` gives. */
export const inGusts = ({ surfaceWind, gust = 0 }: Pick<Flown, 'surfaceWind' | 'gust'>) =>
  gust > surfaceWind.speed ? ' in gusts' : '';

function windLimits(examined: Examined): Found[] {
  const { aircraft, runway, flown } = examined;
  const wind = strongest(flown);
  const across = Math.abs(crosswind(wind, runway.heading));
  const checks = [
    { code: 'wind-over-limit', what: 'wind', value: wind.speed, limit: aircraft.limits.wind },
    { code: 'crosswind-over-limit', what: 'crosswind', value: across, limit: aircraft.limits.crosswind },
  ] as const;
  return checks
    .filter(({ value, limit }) => value > limit + 1e-9)
    .map(({ code, what, value, limit }) => {
      const said = told(value, limit, 'kt', 'most');
      return {
        code,
        message: `The ${what}${inGusts(flown)} is ${said.value}; the limit of the ${aircraft.name} is ${said.limit}.`,
        value,
        limit,
        source: dataOf(aircraft),
        remedy: withinTheLimits(examined),
      };
    });
}

function tailwind(examined: Examined): Found[] {
  const { aircraft, runway, flown } = examined;
  const behind = -headwind(strongest(flown), runway.heading);
  const { limit, source, whose, grade } = tailwindLimit(behind, examined);
  if (behind <= limit + 1e-9) return [];
  const said = told(behind, limit, 'kt', 'most');
  return [
    {
      code: 'tailwind',
      grade,
      message: `The tailwind${inGusts(flown)} on the runway is ${said.value}; ${whose(aircraft.name)} ${said.limit}.`,
      value: behind,
      limit,
      source,
      remedy: `${withinTheLimits(examined)} Landed the other way, the runway has this wind ahead.`,
    },
  ];
}

/** The limit that a tailwind is held against: the aircraft's own, or the usual one, or the school's where that is less. */
function tailwindLimit(
  behind: number,
  { aircraft, minimums }: Examined,
): Pick<Found, 'limit' | 'source' | 'grade'> & { whose: (aircraft: string) => string } {
  const own = aircraft.limits.tailwind;
  const school = minimums?.mostTailwind;
  if (own !== undefined && (behind > own + 1e-9 || own <= (school ?? own))) {
    const whose = (name: string) => `the limit of the ${name} is`;
    return { limit: own, source: dataOf(aircraft), whose, grade: 'not-to-be-flown' };
  }
  if (school !== undefined && school < (own ?? usualTailwind) - 1e-9) {
    return { limit: school, source: "the school's own limit", whose: () => "the school's limit is" };
  }
  return {
    limit: usualTailwind,
    source:
      'ICAO Doc 8168, volume I, 2.1.3: the most with which a runway may be chosen for noise; as a limit for landing: common practice, no source',
    whose: () => 'the most is',
  };
}

/** The strongest wind from the same direction that passes no limit, as a sentence. */
function withinTheLimits({ aircraft, runway, flown, minimums }: Examined): string {
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
  const knots = roundDownTo(most / metresPerSecondPerKnot, 1);
  return knots < 1
    ? 'It would be within the wind limits in a calm.'
    : `It would be within the wind limits in ${knots} kt from the same direction, gusts counted.`;
}

/** The approach speed in gusts: the normal one and half of what they are over the wind. */
export function speedInGusts(normal: number, overTheWind: number): number {
  return normal + overTheWind / 2;
}

/**
 * Gusts are allowed for by half of what they are over the wind, added to the normal approach speed (FAA-H-8083-3,
 * turbulent air approach and landing). Where the approach speed has not that much over 1.3 times the stall speed, a lull
 * takes the margin.
 */
function gusts({ aircraft, flown }: Examined): Found[] {
  const { surfaceWind, gust, approachSpeed, stallSpeed } = flown;
  const over = (gust ?? 0) - surfaceWind.speed;
  const value = (approachSpeed - speedInGusts(0, over)) / stallSpeed;
  if (over <= 0 || value >= leastMargin - 1e-9) return [];
  const said = told(value, leastMargin, 'times', 'least', { value: 'margin' });
  const needed = indicatedSpeed(speedInGusts(leastMargin * stallSpeed, over), aircraft);
  const knots = roundUpTo(needed / metresPerSecondPerKnot, 1);
  const overKnots = roundUpTo(over / metresPerSecondPerKnot, 1);
  return [
    {
      code: 'gust',
      message: `Gusts of ${overKnots} kt over the wind leave the approach speed ${said.value} the stall speed, half of them taken off; it should be at least ${said.limit}.`,
      value,
      limit: leastMargin,
      source: `${handbook}, turbulent air approach and landing: half of the gust factor is added to the approach speed`,
      at: 'final',
      remedy: `An approach speed of ${knots} kt would allow for these gusts.`,
    },
  ];
}
