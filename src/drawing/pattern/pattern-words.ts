import type { KeyPosition, Plan } from '../../flight/terms/plan.ts';
import { formatDirection } from '../../units/angle-text.ts';
import { approachNames } from '../../words/approaches/approach-names.ts';
import { cautionSentences } from '../../words/cautions/grade-words.ts';
import { formatDistance, formatLowHeight, formatTime } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatKeyHeight } from '../../words/keys/key-height.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import { missText } from '../../words/keys/place-words.ts';
import { scaleText } from '../kit/scale-bar.ts';
import type { TextLine } from '../kit/text.ts';
import type { DrawnFault } from '../shared/drawn-fault.ts';
import { windLines } from './pattern-legend.ts';

/** m: a touchdown this close to the spot is on it. */
const onTheSpot = 5;

export function touchesAtSpot(plan: Plan): boolean {
  return Math.hypot(plan.touchdown.along, plan.touchdown.across) <= onTheSpot;
}

/** What is printed beside a key position. */
export function keyLines(plan: Plan, key: KeyPosition, units: PageUnits): TextLine[] {
  if (key.id === 'touchdown') {
    if (touchesAtSpot(plan)) return [{ text: 'Spot' }, { text: 'wheels touch' }];
    return [{ text: keyNames[key.id] }, { text: missText(key.along, units), bold: true }];
  }
  if (key.id === 'aim-point') return [{ text: keyNames[key.id] }, { text: missText(key.along, units) }];
  return [{ text: keyNames[key.id] }, { text: formatKeyHeight(key, plan.cautions, units), bold: true }];
}

export function approachName(plan: Plan): string {
  return approachNames[plan.approach].title;
}

export function patternTitle(plan: Plan, scale: number): string {
  return `${approachName(plan)} to runway ${plan.runway.name}, seen from above, ${scaleText(scale)}`;
}

/** The pattern for a reader who cannot see it: every figure that the drawing shows. */
export function patternDescription(
  plan: Plan,
  units: PageUnits,
  scale: number,
  faults: readonly DrawnFault[] = [],
): string {
  const { runway } = plan;
  const sentences = [
    `${approachName(plan)}, ${plan.circuit}-hand, to runway ${runway.name}, landing ${formatDirection(runway.heading)} true.`,
    `${windLines(plan, units).join(', ')}.`,
    `Scale ${scaleText(scale)}.`,
    ...plan.keys.map((key) => `${keySentence(plan, key, units)}.`),
    ...runway.obstacles.map(
      ({ what, height, along, across }) =>
        `Obstacle: ${what}, ${formatLowHeight(height, units)} high, ${placeText(along, across, units)}.`,
    ),
  ];
  if (!touchesAtSpot(plan)) sentences.push(`The wheels touch ${missText(plan.touchdown.along, units)}.`);
  sentences.push(...cautionSentences(plan, units));
  sentences.push(...faults.map(({ name, end }) => `Fault flown over it: ${name}, ${end}.`));
  return sentences.join(' ');
}

/** `Downwind key: 1,000 ft, 500 m left of the spot, 12 s from the start`. */
export function keySentence(plan: Plan, key: KeyPosition, units: PageUnits): string {
  const low = key.id === 'touchdown' || key.id === 'aim-point';
  const where =
    low && Math.abs(key.along) <= onTheSpot ? 'at the spot' : placeText(key.along, key.across, units);
  const figures = [low ? [] : formatKeyHeight(key, plan.cautions, units), where].flat();
  const start = plan.track[0]?.time ?? 0;
  return `${keyNames[key.id]}: ${figures.join(', ')}, ${formatTime(key.time - start)} from the start`;
}

/** Where a place is from the spot, seen in the landing direction; parts that round to nothing are left out. */
function placeText(along: number, across: number, units: PageUnits): string {
  const nothing = formatDistance(0, units);
  const parts: string[] = [];
  const far = formatDistance(Math.abs(along), units);
  if (far !== nothing) parts.push(`${far} ${along < 0 ? 'before' : 'past'}`);
  const wide = formatDistance(Math.abs(across), units);
  if (wide !== nothing) parts.push(`${wide} ${across < 0 ? 'left of' : 'right of'}`);
  return parts.length === 0 ? 'over the spot' : `${parts.join(' and ')} the spot`;
}
