import type { PlanRequest } from '../../flight/terms/plan.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatLeastHeight } from '../figures/safe-rounding.ts';
import { leastFinal } from '../gates/least-final.ts';

/**
 * The height by which the turn to final is complete (FAA-H-8083-3A, chapter 8, or the school's own minimum), and what
 * to do where it is not: without an engine there is no going around, and no turn is begun lower (common practice, no
 * source).
 */
export function finalLine(
  request: PlanRequest,
  units: PageUnits,
): { readonly by: string; readonly or: string } {
  const height = formatLeastHeight(leastFinal(request), units);
  return {
    by: `Turn to final complete by ${height}`,
    or: request.power === 'idle' ? 'or go around (stopped: land ahead)' : 'or no further turn: land ahead',
  };
}
