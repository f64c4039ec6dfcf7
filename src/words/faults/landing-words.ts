import { standardGravity } from '../../flight/air/constants.ts';
import type { FaultPlan } from '../../flight/faults/fault-plan.ts';
import { classTerms } from '../../flight/terms/aircraft-class.ts';
import type { FaultFlight, FaultFlown, LandingFigures } from '../../flight/terms/fault.ts';
import { formatLowHeight, formatSpeed } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { formatAngleUp, formatLeastSpeed, formatSinkUp, formatTimeDown } from '../figures/safe-rounding.ts';
import { beyondTheModel } from '../refusals/fault-words.ts';
import { enginesStopped } from './final-words.ts';

/** m/s: less than the page can print of a speed. */
const printedSpeed = 0.25;

/** What the landing came to, and what about it the model does not say. */
export function landingWords(
  flight: FaultFlown,
  plan: FaultPlan,
  heldOffAfresh: () => FaultFlight,
  units: PageUnits,
): string {
  const { landing } = flight;
  const words: Readonly<Record<typeof landing.how, () => readonly string[]>> = {
    touched: () => [
      balloonWords(flight, plan, units),
      sideWords(flight, plan, units),
      fastTouch(flight, plan, units),
      landing.beyond ? beyondTheModel[landing.beyond] : '',
    ],
    struck: () => [struckWords(flight, units)],
    dropped: () => [
      balloonWords(flight, plan, units) || levelWords(flight, units),
      dropWords(flight, units),
      // How an aircraft comes down again after climbing is not in the model.
      landing.balloon ? '' : seenWords(heldOffAfresh(), units),
    ],
    'no-landing': () => [landing.beyond ? beyondTheModel[landing.beyond] : ''],
  };
  return words[landing.how]()
    .filter((each) => each !== '')
    .join(' ');
}

function struckWords({ landing }: FaultFlown, units: PageUnits): string {
  if (landing.how !== 'struck') return '';
  return `It still sinks ${formatSinkUp(landing.sink, units)}, the round-out not yet level. What the undercarriage gives back, and so the bounce, is not in the model.`;
}

/** The wheels put down with flying speed left. */
function fastTouch({ change, end }: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const planned = plan.resolved.conditions.speeds.touchdown;
  if (change.kind !== 'touchdown-speed' || end.eas - planned < printedSpeed) return '';
  return `That is at ${formatSpeed(end.eas, units)} (planned ${formatSpeed(planned, units)}).`;
}

/** How long the speed lasts after a round-out that ended too high. */
function levelWords(
  { landing: { level, ...landing }, plannedLanding }: FaultFlown,
  units: PageUnits,
): string {
  if (!level) return '';
  const planned = plannedLanding.level && ` (planned ${formatLowHeight(plannedLanding.level.height, units)})`;
  const gone = isGoneAtOnce(landing)
    ? 'that speed is gone at once'
    : `${lasts(landing)} later that speed is gone`;
  return `It is level ${formatLowHeight(level.height, units)} up${planned ?? ''} at ${formatSpeed(level.eas, units)}; ${gone}.`;
}

/** What a balloon costs, and how long there is to put it right. */
function balloonWords(flight: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  const { landing, plannedLanding } = flight;
  const { balloon, level } = landing;
  if (!balloon || !level) return '';
  const lost = (plannedLanding.level?.eas ?? level.eas) - level.eas;
  const cost =
    lost < printedSpeed ? '' : ` and costs ${formatSpeed(lost, units)} more than the planned round-out`;
  const until = isGoneAtOnce(landing)
    ? 'at its top hardly any speed is left'
    : `from its top the speed lasts ${lasts(landing)}`;
  const then = enginesStopped(flight, plan) ? '' : ': power before that, or it drops';
  return `It balloons ${formatLowHeight(balloon.rise, units)}${cost}; ${until}${then}.`;
}

/** Whether hardly any speed is left to hold off with. */
const isGoneAtOnce = ({ holdOff }: Pick<LandingFigures, 'holdOff'>) => (holdOff?.time ?? 0) < 1;

/** Whole seconds that there are, rounded down. */
const lasts = ({ holdOff }: Pick<LandingFigures, 'holdOff'>) => formatTimeDown(holdOff?.time ?? 0);

/**
 * m/s at the ground after a fall of `drop` m with no lift left, from the sink at its start: v^2 = v0^2 + 2gh. What
 * the wing still carries makes it less.
 */
export function sinkAfterDrop(drop: number, sink = 0): number {
  return Math.sqrt(sink ** 2 + 2 * standardGravity * drop);
}

function dropWords({ landing, track }: FaultFlown, units: PageUnits): string {
  if (landing.how !== 'dropped') return '';
  const most = formatSinkUp(sinkAfterDrop(landing.drop, track.at(-1)?.sink), units, 'coarse');
  return `Falling ${formatLowHeight(landing.drop, units)} with no lift left is up to ${most} at the ground; how much lift is left, and whether a wing drops, is not in the model.`;
}

/** The same fault, seen in time. */
function seenWords(seen: FaultFlight, units: PageUnits): string {
  if (!seen.flown || seen.landing.how !== 'touched') return '';
  return `Seen, and held off afresh from there, it touches at ${formatSinkUp(seen.landing.sink, units)}.`;
}

function sideWords({ change, landing }: FaultFlown, plan: FaultPlan, units: PageUnits): string {
  if (change.kind !== 'touchdown-drift' || landing.how !== 'touched') return '';
  const side = Math.abs(landing.side);
  if (side < printedSpeed) return 'Today no wind blows across the runway: there is no drift to stop.';
  const drifts = `It drifts off the centreline at up to ${formatLeastSpeed(side, units)}`;
  if (classTerms[plan.resolved.conditions.aircraft.class].touchesInCrab) return `${drifts} as it touches.`;
  return `${drifts}, ${formatAngleUp(Math.abs(landing.drift))} off the way the nose points, as it touches.`;
}
