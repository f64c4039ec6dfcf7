import { approaches } from '../../flight/approaches/approaches.ts';
import type { Gate, Plan } from '../../flight/terms/plan.ts';
import { numberText } from '../../units/rounding.ts';
import { cautionSentences, markNote } from '../../words/cautions/grade-words.ts';
import { formatHeight, formatLowHeight } from '../../words/figures/format.ts';
import { lowerFirst } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatLeastHeight } from '../../words/figures/safe-rounding.ts';
import { type BandEdge, gateBand, noBandText, noBandWhy } from '../../words/gates/gate-band.ts';
import { formatKeyHeight } from '../../words/keys/key-height.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import { missText } from '../../words/keys/place-words.ts';
import { approachName, keySentence, touchesAtSpot } from '../pattern/pattern-words.ts';
import { type DrawnFault, faultSentence } from '../shared/drawn-fault.ts';
import { obstaclesOnFinal, type ProfileView } from './profile-view.ts';

export function profileTitle(plan: Plan): string {
  return `${approachName(plan)} to runway ${plan.runway.name}, height against distance to go`;
}

/** The line under the drawing. */
export function profileNote(
  plan: Plan,
  units: PageUnits,
  exaggeration: number,
  faults: readonly DrawnFault[] = [],
): string {
  const drawn = drawnText(exaggeration);
  const bars = barsNote(plan, units);
  const part =
    approaches[plan.approach].endsIn !== undefined
      ? ' The circles above the downwind key are not drawn.'
      : '';
  const dashed =
    faults.length > 0
      ? ' Dashed: a fault flown, by the distance that it still has to fly to the spot, with a cross where it ends.'
      : '';
  return `Height above the spot, distance to go along the track. ${drawn}${bars}${part}${markNote(plan)}${dashed}`;
}

/** What the bars are and, where there is none because there is no band, that. */
function barsNote({ gates }: Plan, units: PageUnits): string {
  const none = gates.flatMap((gate) => {
    const band = gateBand(gate, units);
    const label = keyNames[gate.at];
    return band.none === undefined
      ? []
      : [` No bar ${gatePlace(gate, lowerFirst(label))}: ${noBandWhy[band.none]}.`];
  });
  const bars = gates.length > none.length ? ' Bars: heights from which the spot is still made.' : '';
  return bars + none.join('');
}

/** `on final`, `at the base key`. */
const gatePlace = ({ at }: Gate, name: string) => (at === 'final' ? 'on final' : `at the ${name}`);

/** How many times as large: `3`, `1.5`. */
export function timesText(exaggeration: number): string {
  return numberText(exaggeration, Number.isInteger(exaggeration) ? 1 : 0.1);
}

function drawnText(exaggeration: number): string {
  if (exaggeration === 1) return 'Heights and distances drawn alike.';
  return `Heights drawn ${timesText(exaggeration)}× as large as distances.`;
}

export function finalTurnText(leastFinal: number, units: PageUnits): string {
  return `${formatLeastHeight(leastFinal, units)}: turn to final complete`;
}

/** The profile for a reader who cannot see it. */
export function profileDescription(
  plan: Plan,
  units: PageUnits,
  { exaggeration, leastFinal }: Pick<ProfileView, 'exaggeration' | 'leastFinal'>,
  faults: readonly DrawnFault[] = [],
): string {
  return [
    `${approachName(plan)} to runway ${plan.runway.name}: height above the spot against distance to go along the track.`,
    drawnText(exaggeration),
    ...plan.keys.map((key) => `${keySentence(plan, key, units)}.`),
    ...plan.gates.map((gate) => `${gateText(keyNames[gate.at], gate, plan.cautions, units)}.`),
    ...obstaclesOnFinal(plan).map(
      ({ what, height }) => `Under final: ${what}, ${formatLowHeight(height, units)} high.`,
    ),
    `A line marks ${formatLeastHeight(leastFinal, units)}, by which the turn to final is complete.`,
    ...(touchesAtSpot(plan) ? [] : [`The wheels touch ${missText(plan.touchdown.along, units)}.`]),
    ...cautionSentences(plan, units),
    ...faults.map(faultSentence),
  ].join(' ');
}

function gateText(label: string, gate: Gate, cautions: Plan['cautions'], units: PageUnits): string {
  const name = lowerFirst(label);
  const band = gateBand(gate, units);
  if (band.none !== undefined) {
    return `There is ${noBandText} of heights ${gatePlace(gate, name)}: ${noBandWhy[band.none]}`;
  }
  const planned = `the planned ${formatKeyHeight({ id: gate.at, height: gate.plan }, cautions, units)}`;
  const text = (edge: BandEdge) => (typeof edge === 'number' ? formatHeight(edge, units) : planned);
  const missing = [
    ...(band.low === 'open' ? ['; no lower edge was found'] : []),
    ...(band.high === 'open' ? ['; no upper edge was found'] : []),
  ];
  return `The spot is still made from ${gate.at === 'final' ? 'final' : `the ${name}`} between ${text(band.low)} and ${text(band.high)}${missing.join('')}`;
}
