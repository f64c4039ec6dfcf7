import type { FaultPlan } from '../../flight/faults/fault-plan.ts';
import {
  backToThePath,
  beginsFinal,
  belowThePath,
  type OnFinal,
  steepApproachLoses,
} from '../../flight/faults/on-final.ts';
import { steepUntil } from '../../flight/plan/final-band.ts';
import type { FaultFlown, FaultRecovery } from '../../flight/terms/fault.ts';
import { formatDistance, formatHeight, formatSpeed } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatEdge, formatSafeDistance, formatTimeUp } from '../figures/safe-rounding.ts';
import { leastFinal } from '../gates/least-final.ts';
import { printedDistance } from './ground-words.ts';

/** m: nobody corrects less than this off the path (about two steps of the page). */
const worthAWord = 6;

export const enginesStopped = ({ change }: FaultFlown, { request }: FaultPlan) =>
  request.power === 'stopped' || change.kind === 'power-stopped';

/**
 * A flight that comes to final off the planned path: how far off, what brings it back, and when to go around. Empty
 * where it comes to final on the path, or the fault is in a landing or a speed of final.
 */
export function finalWords(
  flight: FaultFlown,
  plan: FaultPlan,
  recoveries: () => readonly FaultRecovery[],
  units: PageUnits,
): string {
  const start = beginsFinal(flight.track);
  const below = start && belowThePath(plan, start);
  if (!start || below === undefined) return '';
  if (!planStillHolds(flight)) return lowerThanSound(start, flight, plan, units);
  if (below >= worthAWord && flight.end.along < -printedDistance) {
    return lowWords(start, below, plan, units);
  }
  if (below <= -worthAWord && flight.end.along > printedDistance) {
    // Where it comes to final beside the runway, the way back to the centreline comes first, and is a different way.
    const steep = recoveries().find(({ by }) => by === 'steep-approach');
    const loses = steep && steepApproachLoses(plan, start);
    const makes = steep?.makes ?? false;
    return highWords(-below, loses, makes, units);
  }
  return '';
}

/** With another wind, weight or engine the planned path is not the one to get back to: it could not be kept. */
const planStillHolds = ({ change: { kind } }: FaultFlown) =>
  kind !== 'wind' && kind !== 'mass' && kind !== 'power-stopped';

function lowerThanSound(start: OnFinal, flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const sound = leastFinal(plan.request);
  if (start.height >= sound || flight.end.along > -printedDistance || enginesStopped(flight, plan)) return '';
  return `Wings level on final it is lower than ${formatEdge(sound, 'low', units)}: go around.`;
}

/** Multiple of the height at which the plan comes to final: drawn outward higher than this, its path says nothing. */
const farOut = 1.5;

/** So far out before the plan comes to final, being below its path means nothing: there is no path that high. */
function lowOnFinal(start: OnFinal, below: number, { pattern }: FaultPlan, units: PageUnits): string {
  const planned = pattern.keys.find(({ id }) => id === 'final');
  const farther = planned ? planned.along - start.along : 0;
  return farther > 0 && start.height + below > farOut * planned!.height
    ? `at ${formatHeight(start.height, units)}, ${formatDistance(farther, units)} farther out than planned`
    : `${formatEdge(below, 'low', units)} below the planned path`;
}

function lowWords(start: OnFinal, below: number, plan: FaultPlan, units: PageUnits): string {
  const low = lowOnFinal(start, below, plan, units);
  if (plan.request.power === 'stopped') return `On final it is ${low}.`;
  const sound = leastFinal(plan.request);
  const minimum = formatEdge(sound, 'low', units);
  const back = backToThePath(plan, start);
  const far = (distance: typeof formatDistance) =>
    back && `${distance(back.distance, units)} (${formatTimeUp(back.seconds)})`;
  const speed = formatSpeed(plan.resolved.conditions.speeds.approach, units);
  if (start.height < sound) {
    const first = `Wings level on final it is ${low}, and lower than ${minimum}: go around.`;
    const level = `Level flight back to the planned path, with power at ${speed}, would take ${far(formatDistance)}, all of it below ${minimum}.`;
    return back ? `${first} ${level}` : first;
  }
  if (!back) return `On final it is ${low}: go around.`;
  // A place on the planned path, as the key there is printed: it may be the key.
  const at = formatHeight(back.height, units);
  return `On final it is ${low}: with power, level flight at ${speed} for ${far(roundedUp)} meets the planned path at ${at}. Not on it by ${minimum}, go around.`;
}

function highWords(above: number, loses: number | undefined, makes: boolean, units: PageUnits): string {
  const high = `On final it is ${formatEdge(above, 'low', units)} above the planned path`;
  if (loses === undefined || loses < worthAWord) return `${high}.`;
  const steep = `the steep approach, begun there and ended at ${formatHeight(steepUntil, units)}, puts a surplus of up to ${formatEdge(loses, 'high', units)} right`;
  if (!makes) return `${high}; ${steep}: not enough.`;
  // Rounded each to its safe side, the two figures may have crossed.
  return `${high}; ${steep}: ${loses - above < worthAWord ? 'just enough, begun at once' : 'enough'}.`;
}

const roundedUp = (metres: number, units: PageUnits) => formatSafeDistance(metres, 'up', units);
