import type { Plan } from '../../flight/terms/plan.ts';
import { dayMessages } from './day-messages.ts';
import { gradeMessages } from './grade-messages.ts';
import type { PlanMessage } from './say-of-plan.ts';
import type { Scenario } from './scenario.ts';

/**
 * Everything said about a plan wherever it is made: its grades, and the limits it breaks of the day that the lesson
 * asks for.
 */
export function planMessages(plan: Plan, scenario: Scenario): PlanMessage[] {
  return [...gradeMessages(plan, scenario), ...dayMessages(plan, scenario)];
}
