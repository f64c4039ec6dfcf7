import { soundFinal } from '../../flight/plan/final-band.ts';
import type { PlanRequest } from '../../flight/terms/plan.ts';

/** m: the turn to final is complete at this height or higher: 300 ft, or the school's own minimum where that is more. */
export function leastFinal({ minimums }: Pick<PlanRequest, 'minimums'>): number {
  return Math.max(soundFinal, minimums?.finalTurn ?? 0);
}
