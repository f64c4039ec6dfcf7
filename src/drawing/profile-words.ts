import type { Plan } from '../flight/plan.ts';
import { formatHeight, formatLowHeight } from '../units/format.ts';
import type { PageUnits } from '../units/page-units.ts';
import { numberText } from '../units/rounding.ts';
import { type DrawnFault, faultSentence } from './drawn-fault.ts';
import { cautionSentences, markNote } from './grade-words.ts';
import { approachName, keySentence, missText, touchesAtSpot } from './pattern-words.ts';
import { finalTurnHeight, obstaclesOnFinal } from './profile-view.ts';

export function profileTitle(plan: Plan): string {
  return `${approachName(plan)} to runway ${plan.runway.name}, height against distance to go`;
}

/** The line under the drawing. */
export function profileNote(plan: Plan, exaggeration: number, faults: readonly DrawnFault[] = []): string {
  const drawn = drawnText(exaggeration);
  const bars = plan.gates.length > 0 ? ' Bars: heights from which the spot is still made.' : '';
  const part = plan.approach === 'spiral' ? ' The circles above the downwind key are not drawn.' : '';
  const dashed =
    faults.length > 0
      ? ' Dashed: a fault flown, by the distance that it still has to fly to the spot, with a cross where it ends.'
      : '';
  return `Height above the spot, distance to go along the track. ${drawn}${bars}${part}${markNote(plan)}${dashed}`;
}

/** How many times as large: `3`, `1.5`. */
export function timesText(exaggeration: number): string {
  return numberText(exaggeration, Number.isInteger(exaggeration) ? 1 : 0.1);
}

function drawnText(exaggeration: number): string {
  if (exaggeration === 1) return 'Heights and distances drawn alike.';
  return `Heights drawn ${timesText(exaggeration)}× as large as distances.`;
}

export function finalTurnText(units: PageUnits): string {
  return `${formatHeight(finalTurnHeight, units)}: turn to final complete`;
}

/** The profile for a reader who cannot see it. */
export function profileDescription(
  plan: Plan,
  units: PageUnits,
  exaggeration: number,
  faults: readonly DrawnFault[] = [],
): string {
  const label = (id: string) => plan.keys.find((key) => key.id === id)?.label ?? id;
  return [
    `${approachName(plan)} to runway ${plan.runway.name}: height above the spot against distance to go along the track.`,
    drawnText(exaggeration),
    ...plan.keys.map((key) => `${keySentence(plan, key, units)}.`),
    ...plan.gates.map((gate) => `The spot is still made from the ${gateText(label(gate.at), gate, units)}.`),
    ...obstaclesOnFinal(plan).map(
      ({ what, height }) => `Under final: ${what}, ${formatLowHeight(height, units)} high.`,
    ),
    `A line marks ${formatHeight(finalTurnHeight, units)}, by which the turn to final is complete.`,
    ...(touchesAtSpot(plan) ? [] : [`The wheels touch ${missText(plan.touchdown.along, units)}.`]),
    ...cautionSentences(plan),
    ...faults.map(faultSentence),
  ].join(' ');
}

function gateText(label: string, gate: Plan['gates'][number], units: PageUnits): string {
  const at = `${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  const { low, plan, high } = gate;
  if (low !== null && high !== null)
    return `${at} between ${formatHeight(low, units)} and ${formatHeight(high, units)}`;
  const planned = `the planned ${formatHeight(plan, units)}`;
  if (low !== null)
    return `${at} between ${formatHeight(low, units)} and ${planned}; no upper edge was found`;
  if (high !== null)
    return `${at} between ${planned} and ${formatHeight(high, units)}; no lower edge was found`;
  return `${at} at ${planned}; no edge was found`;
}
