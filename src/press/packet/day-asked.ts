import { crosswind } from '../../flight/air/wind.ts';
import { inGusts, strongest } from '../../flight/plan/cautions/wind-cautions.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import type { Day } from '../../lesson/day.ts';
import { metresPerSecondPerKnot } from '../../units/factors.ts';
import { withUnit } from '../../units/rounding.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatLeastSpeed, formatMostSpeed } from '../../words/figures/safe-rounding.ts';
import { type LimitKind, tellingApart } from '../../words/figures/telling-apart.ts';

/** What the day is compared with in a plan. */
export interface Weathered {
  readonly aircraft: Pick<Plan['aircraft'], 'name' | 'limits'>;
  readonly runway: Pick<Plan['runway'], 'heading'>;
  readonly flown: Pick<Plan['flown'], 'surfaceWind' | 'gust'>;
}

/** The figures that a day may ask for. */
export type DayFigure = 'wind' | 'crosswind';

/** A limit of the day that the wind breaks. */
interface Breach {
  readonly figure: DayFigure;
  readonly words: string;
}

/** The day that a lesson asks for, in figures for one aircraft. */
export interface DayAsked {
  readonly words: string;
  readonly breaches: readonly Breach[];
}

/** m/s. What floating point leaves over from an exact fit breaks nothing. */
const aHair = 1e-9;

/**
 * Compares the wind of a plan with the day that its lesson asks for; the most wind is compared with the gust where
 * there is one.
 */
export function dayAsked(plan: Weathered, day: Day, units: PageUnits): DayAsked {
  return { words: askedWords(plan, day, units), breaches: breachesOf(plan, day, units) };
}

function askedWords({ aircraft }: Weathered, day: Day, units: PageUnits): string {
  const { mostWind, mostCrosswind, leastWind, leastCrosswind } = day;
  const least = (speed: number | undefined) =>
    speed === undefined ? [] : [`at least ${formatLeastSpeed(speed, units)}`];
  const wind = [
    ...least(leastWind),
    ...(mostWind === undefined ? [] : [`no more than ${formatMostSpeed(mostWind, units)}`]),
  ];
  const across = [
    ...least(leastCrosswind),
    ...(mostCrosswind === undefined
      ? []
      : [`no more than ${mostAcrossText(mostCrosswind, aircraft, units)}`]),
  ];
  const share = mostCrosswind === undefined ? '' : shareWords(mostCrosswind, aircraft.name);
  const asked = [
    wind.join(' and '),
    across.length === 0 ? '' : `${across.join(' and ')} across the runway${share}`,
  ].filter((part) => part !== '');
  return `A wind of ${asked.join(', and of ')}. ${gustWords(day)}`;
}

/** To half a knot; otherwise half of a limit could be a whole knot less. */
function mostAcrossText(
  asked: NonNullable<Day['mostCrosswind']>,
  aircraft: Weathered['aircraft'],
  units: PageUnits,
): string {
  const most = mostAcross(asked, aircraft);
  if (units.speed !== 'kt') return formatMostSpeed(most, units);
  const halves = Math.floor(most / (0.5 * metresPerSecondPerKnot) + 1e-6);
  return withUnit(halves / 2, halves % 2 === 0 ? 1 : 0.1, 'kt');
}

/** m/s. */
function mostAcross(asked: NonNullable<Day['mostCrosswind']>, { limits }: Weathered['aircraft']): number {
  return typeof asked === 'number' ? asked : asked.share * limits.crosswind;
}

function shareWords(asked: NonNullable<Day['mostCrosswind']>, name: string): string {
  if (typeof asked === 'number') return '';
  const perCent = Math.round(100 * asked.share);
  const part = perCent === 100 ? '' : perCent === 50 ? 'half of ' : `${withUnit(perCent, 1, '%')} of `;
  return `, ${part}the limit of the ${name}`;
}

function gustWords({ mostWind, mostCrosswind, leastWind, leastCrosswind }: Day): string {
  if (mostWind === undefined && mostCrosswind === undefined) return 'Gusts do not count.';
  return leastWind === undefined && leastCrosswind === undefined
    ? 'Gusts count.'
    : 'Gusts count towards the most, not towards the least.';
}

function breachesOf({ aircraft, runway, flown }: Weathered, day: Day, units: PageUnits): Breach[] {
  const { mostWind, mostCrosswind, leastWind, leastCrosswind } = day;
  const wind = strongest(flown);
  const across = Math.abs(crosswind(wind, runway.heading));
  const gusts = inGusts(flown) ? ' in gusts' : '';
  const told = (value: number, limit: number, kind: LimitKind) =>
    tellingApart({ value, limit }, units.speed, kind);
  const breach = (figure: DayFigure, is: string, asked: string): Breach => ({
    figure,
    words: `The wind${is}, and the lesson asks for ${asked}: choose another wind, or another day.`,
  });
  const breaches: Breach[] = [];
  if (mostWind !== undefined && wind.speed > mostWind + aHair) {
    const { value, limit } = told(wind.speed, mostWind, 'most');
    breaches.push(breach('wind', `${gusts} is ${value}`, `no more than ${limit}`));
  }
  if (leastWind !== undefined && flown.surfaceWind.speed < leastWind - aHair) {
    const { value, limit } = told(flown.surfaceWind.speed, leastWind, 'least');
    breaches.push(breach('wind', ` is ${value}`, `at least ${limit}`));
  }
  const steady = Math.abs(crosswind(flown.surfaceWind, runway.heading));
  if (leastCrosswind !== undefined && steady < leastCrosswind - aHair) {
    const { value, limit } = told(steady, leastCrosswind, 'least');
    breaches.push(breach('crosswind', ` has ${value} across the runway`, `at least ${limit}`));
  }
  if (mostCrosswind !== undefined && across > mostAcross(mostCrosswind, aircraft) + aHair) {
    const { value, limit } = told(across, mostAcross(mostCrosswind, aircraft), 'most');
    breaches.push(breach('crosswind', `${gusts} has ${value} across the runway`, `no more than ${limit}`));
  }
  return breaches;
}
