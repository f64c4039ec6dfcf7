import type { PlanRequest } from '../flight/terms/plan.ts';
import { aircraftOf, scenarioOf } from '../press/packet/scenario.ts';
import type { School } from '../school/school.ts';

/**
 * The aircraft of the school's handbook, each ready to fly a half-circuit approach in the school's usual wind with
 * the engine idling: the flown checks use these. Throws ScenarioError for a name that the school does not have.
 */
export function flyersOf(school: School): PlanRequest[] {
  const lesson = { title: 'Checks', approach: '180' } as const;
  return aircraftOf(school, lesson).map((id) => scenarioOf(school, lesson, id, { power: 'idle' }).request);
}
