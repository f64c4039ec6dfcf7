import type { FaultPlan } from '../../flight/faults/fault-plan.ts';
import { beginsFinal, belowThePath, floatFrom, slowOnFinal } from '../../flight/faults/on-final.ts';
import { changed, type FaultFlown } from '../../flight/terms/fault.ts';
import { roundUpTo } from '../../units/rounding.ts';
import { distanceStep, formatDistance, formatHeight, formatSink, formatSpeed } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatEdge, formatSafeDistance, formatTimeUp } from '../figures/safe-rounding.ts';
import { enginesStopped } from './final-words.ts';
import { leftAtStop, printedDistance, rollOf } from './ground-words.ts';

/** m: a place past the spot that the page, which rounds down, can tell from the spot (50 ft, or 10 m). */
const leastPast = 16;
/** m: less than the page can print of a height. */
const printedHeight = 3;
/** m/s: the step of the page. */
const aKnot = 0.5;

/** m/s EAS: how far the speed of final is off the approach speed; undefined where the fault is not that speed. */
export function offApproachSpeed({ change }: FaultFlown, plan: FaultPlan): number | undefined {
  if (change.kind !== 'final-speed' && change.kind !== 'round-out-speed') return undefined;
  const { approach } = plan.resolved.conditions.speeds;
  return changed(approach, change.amount) - approach;
}

/** Slow on final: how much it sinks, and what getting the speed back takes. */
export function slowWords(flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const off = offApproachSpeed(flight, plan);
  if (off === undefined || off > -aKnot) return '';
  const { speeds, aircraft } = plan.resolved.conditions;
  const eas = speeds.approach + off;
  const slow = slowOnFinal(plan, eas);
  const behind = slow.slowerSinksFaster
    ? 'behind the drag curve, where slower sinks faster'
    : slow.behindTheDragCurve
      ? 'behind the drag curve, where slower costs more drag'
      : '';
  const sinks = `At ${formatSpeed(eas, units)} it sinks ${formatSink(slow.sink, units)} (planned ${formatSink(slow.plannedSink, units)})`;
  const floor = formatEdge(aircraft.roundOut.height + slow.height, 'low', units);
  const late = enginesStopped(flight, plan) ? '' : ': power and go around';
  return [
    `${sinks}${behind && `, ${behind}`}.`,
    `Back to ${formatSpeed(speeds.approach, units)} takes ${formatEdge(slow.height, 'low', units)} and ${formatTimeUp(slow.time)};`,
    `begun below ${floor} it is not there by the round-out${late}.`,
  ].join(' ');
}

/** Fast on final: how far it floats, how much runway that leaves, and where to go around. */
export function fastWords(flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const off = offApproachSpeed(flight, plan);
  if (off === undefined || off < aKnot) return '';
  const { speeds } = plan.resolved.conditions;
  const [floated, planned] = [floatFrom(plan, speeds.approach + off), floatFrom(plan, speeds.approach)];
  if (!floated || !planned) return '';
  const past = floated.landing - planned.landing;
  const left = leftAtStop({ along: past }, plan);
  const stops =
    left >= 0
      ? `with ${formatSafeDistance(left, 'down', units)} of runway left after the landing roll`
      : 'and the landing roll no longer fits';
  const floats = `It floats ${formatSafeDistance(floated.holdOff, 'up', units)} (planned ${formatDistance(planned.holdOff, units)})`;
  // This flight does touch there.
  if (flight.change.kind === 'round-out-speed') {
    const words = [
      keptHighWords(flight, plan, units),
      `${floats}, ${stops}.`,
      goAroundPoint(flight, plan, units),
    ];
    return words.filter((each) => each !== '').join(' ');
  }
  return [
    steeperWords(flight),
    `${floats}.`,
    `At that speed from the planned round-out it would touch ${formatSafeDistance(past, 'up', units)} past the spot, ${stops}.`,
    goAroundPoint(flight, plan, units),
  ]
    .filter((words) => words !== '')
    .join(' ');
}

/** Where the speed came from. */
function keptHighWords({ track }: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const start = beginsFinal(track);
  const below = start && belowThePath(plan, start);
  if (below === undefined || below > -printedHeight) return '';
  return `It came to final ${formatHeight(-below, units)} above the planned path, and was dived for the aim point.`;
}

/** Why a flight that floats farther does not end farther. */
function steeperWords({ end }: FaultFlown): string {
  if (end.along >= printedDistance) return '';
  const much = end.along > -printedDistance ? 'as much as' : 'more than';
  return `The faster glide is steeper, and that takes ${much} the float gives.`;
}

/**
 * The place past which the wheels must not still be up: beyond it there is room for the landing roll and as much
 * again (common practice, no source).
 */
function goAroundPoint(flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  if (enginesStopped(flight, plan)) return '';
  // From the roll as the page prints it: whoever takes it twice off the runway gets this place.
  const roll = roundUpTo(rollOf(plan), distanceStep(units));
  const { length, spot } = plan.request.runway;
  const point = length - spot - 2 * roll;
  const where =
    point < leastPast ? 'at the spot' : `${formatSafeDistance(point, 'down', units)} past the spot`;
  return `Not down ${where}, go around: beyond it there is less than twice the landing roll.`;
}
