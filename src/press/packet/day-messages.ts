import type { Plan } from '../../flight/terms/plan.ts';
import { settingName } from '../../words/cautions/grade-sentences.ts';
import { type DayFigure, dayAsked } from './day-asked.ts';
import type { PlanMessage } from './say-of-plan.ts';
import type { Scenario } from './scenario.ts';

/**
 * Where a figure of the day comes from. A wind that was typed comes before the day, which
 * is always typed. A runway or an airfield counts only where it was asked for.
 */
const keysOf: Readonly<Record<DayFigure, readonly string[]>> = {
  wind: ['wind', 'gust', 'day'],
  crosswind: ['wind', 'gust', 'day', 'runway', 'airfield'],
};

/** A warning for each limit of the day the lesson asks for that the wind breaks. */
export function dayMessages(plan: Plan, { day, units }: Pick<Scenario, 'day' | 'units'>): PlanMessage[] {
  if (day === undefined) return [];
  return dayAsked(plan, day, units).breaches.map(({ figure, words }) => ({
    severity: 'warning',
    rule: 'day',
    words: `${settingName(plan, units)}: not the day that the lesson asks for. ${words}`,
    keys: keysOf[figure],
  }));
}
