import type { Plan, TrackSample } from '../../flight/terms/plan.ts';
import { formatLowHeight } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Point } from '../kit/geometry.ts';
import type { WantedLabel } from '../labels/labels.ts';
import { type DrawnFault, endLabel } from '../shared/drawn-fault.ts';
import { type LandingEnd, landingStart, pathOf } from './round-out-flight.ts';

/** The last part of a fault, drawn beside the planned landing. */
export interface LandingFault {
  readonly fault: DrawnFault;
  /** From where it is as low as the drawing is high, to its end. */
  readonly samples: readonly TrackSample[];
  readonly ends: LandingFaultEnd;
}

/** Put down as planned; struck in the round-out; put down with flying speed left; out of speed in the air. */
type LandingFaultEnd = 'down' | 'struck' | 'carried' | 'dropped';

/** The landing of a plan, and the faults drawn over it. */
export interface DrawnLanding {
  readonly plan: Plan;
  readonly end: LandingEnd;
  readonly faults: readonly LandingFault[];
}

/** Why the drawing of a landing does not show a fault. */
export type NotInLanding = 'no-round-out' | 'ends-too-far-off' | 'as-planned';

/**
 * m: a fault that ends farther than this from the planned touchdown, and farther than the planned landing is long,
 * would squeeze the landing flat.
 */
const leastReach = 160;
/** m: paths this near to each other are one line on paper; ends this near are one place in figures. */
const alike = { height: 0.1, along: 5 };

/** The part of a fault that lies in the drawing of `end`, the planned landing; or why there is none. */
export function landingFault(end: LandingEnd, fault: DrawnFault): LandingFault | NotInLanding {
  const { track } = fault;
  const pull = track.findIndex(({ phase }) => phase === 'round-out');
  if (pull < 1) return 'no-round-out';
  const planned = [...end.final, ...end.roundOut.slice(1), ...end.holdOff.slice(1)];
  const [first, touch] = [planned[0]!, planned.at(-1)!];
  const off = track.at(-1)!.along - touch.along;
  if (Math.abs(off) > Math.max(leastReach, touch.along - first.along)) return 'ends-too-far-off';
  const from = landingStart(track, Math.max(shownHeight(end), 1.2 * track[pull - 1]!.height));
  const samples = track.slice(from === -1 ? pull - 1 : Math.min(from, pull - 1));
  const same = samples.every(({ along, height }) => {
    const there = heightAt(planned, along);
    return there === undefined || Math.abs(there - height) <= alike.height;
  });
  if (same && Math.abs(off) <= alike.along) return 'as-planned';
  return { fault, samples, ends: endOf(samples.at(-1)!, touch) };
}

/** m: where the drawing of a planned landing begins. */
function shownHeight({ final }: LandingEnd): number {
  return final[0]!.height;
}

/** Height of the planned path over a place that it passes. m. */
function heightAt(planned: readonly TrackSample[], along: number): number | undefined {
  const path = pathOf(planned);
  const after = path.findIndex((point) => point.along >= along);
  if (after < 1) return undefined;
  const [a, b] = [path[after - 1]!, path[after]!];
  return a.height + ((b.height - a.height) * (along - a.along)) / (b.along - a.along);
}

/** m: a drop from lower than this counts as a touchdown, as in the flight of a fault. */
const leastDrop = 0.1;
/** m/s over the planned touchdown speed: a wing that still carries. */
const carrying = 0.5;

function endOf(last: TrackSample, planned: TrackSample): LandingFaultEnd {
  if (last.height > leastDrop) return 'dropped';
  if (last.phase === 'round-out') return 'struck';
  return last.eas > planned.eas + carrying ? 'carried' : 'down';
}

/** How the flight of a fault ends, where it does not end with the wheels put down from the hold-off. */
function endWords({ samples, ends }: LandingFault, units: PageUnits): string | undefined {
  if (ends === 'dropped') return `speed gone ${formatLowHeight(samples.at(-1)!.height, units)} up`;
  if (ends === 'struck') return 'wheels strike';
  return ends === 'carried' ? 'wing still carries' : undefined;
}

export function landingFaultLabel(landing: LandingFault, at: Point, units: PageUnits): WantedLabel {
  const label = endLabel(landing.fault, at);
  const how = endWords(landing, units);
  return how === undefined ? label : { ...label, lines: [...label.lines, { text: how }] };
}

/** For a reader who cannot see it. */
export function landingFaultSentence(landing: LandingFault, units: PageUnits): string {
  const { name, end } = landing.fault;
  return `Fault flown over it: ${[name, end, endWords(landing, units)].filter(Boolean).join(', ')}.`;
}

/** What the lines of faults mean, for the note under the drawing. */
export function dashedNote(landings: readonly LandingFault[]): string {
  const dropped = landings.some(({ ends }) => ends === 'dropped');
  const thrown = landings.some(({ ends }) => ends === 'struck' || ends === 'carried');
  return [
    'Dashed: a fault flown, with a cross where it ends.',
    ...(dropped ? ['A cross in the air: how it falls from there is not in the model.'] : []),
    ...(thrown ? ['What wheels that strike give back is not in the model.'] : []),
  ].join(' ');
}
