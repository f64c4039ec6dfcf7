import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { numberText, withUnit } from '../../units/rounding.ts';
import { formatDistance, formatHeight } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { runwaySize } from '../pattern/pattern-labels.ts';
import { aimAlong, type Sight, type SightId, sightHeight } from './final-sight-view.ts';

export const sightNames: Readonly<Record<SightId, string>> = { low: 'Low', right: 'Right', high: 'High' };

/** What the aim point does if the glide goes on at the plan's angle. */
export function meaning({ id, miss }: Sight, units: PageUnits): string {
  const far = formatDistance(Math.abs(miss), units);
  if (id === 'low') return `The aim point creeps up: the glide ends ${far} short of it.`;
  if (id === 'high') return `The aim point slides down: the glide ends ${far} past it.`;
  return 'The aim point stays where it is: the glide ends there.';
}

export function angleWords({ depression }: Sight): string {
  return `aim point ${formatAngle(depression)} below the horizon`;
}

export function heightWords({ eye }: Sight, units: PageUnits): string {
  return formatHeight(eye.height, units);
}

/** Ground from the eye to the aim point; says so where final begins below the usual height. */
function distanceWords(plan: Plan, { eye }: Sight, units: PageUnits): string {
  const far = `${formatDistance((aimAlong(plan) ?? 0) - eye.along, units)} before the aim point`;
  const usual = Math.abs(eye.height - sightHeight) < 1;
  return usual
    ? far
    : `${far} (half-way along final, which begins below ${formatHeight(sightHeight, units)})`;
}

/** mm: the distance from which a page is read. */
const readingDistance = 400;

/** `cutOff`: whether a runway runs out of its picture at the foot. */
export function sightNote(
  plan: Plan,
  sight: Sight,
  units: PageUnits,
  { focus, cutOff }: { readonly focus: number; readonly cutOff: boolean },
): string {
  const degree = `1° at the horizon is ${withUnit(focus * Math.tan(Math.PI / 180), 0.1, 'mm')}`;
  const times = numberText(readingDistance / focus, 0.1);
  const foot = cutOff ? ' A runway open at its foot goes on below the picture.' : '';
  return (
    `All three ${distanceWords(plan, sight, units)}, on the centreline, looking level along the runway. Dotted: where the ` +
    `aim point lies on the right path. Stroke across the runway: the spot.${foot} The same angles in all three: ${degree}; ` +
    `to the pilot it is ${times} times as large as on a page held at ${withUnit(readingDistance / 10, 1, 'cm')}.`
  );
}

export function sightTitle({ runway }: Plan): string {
  return `Runway ${runway.name} as seen on final: low, right and high`;
}

/** The three views for a reader who cannot see them. */
export function sightDescription(
  plan: Plan,
  sights: readonly Sight[],
  units: PageUnits,
  picture: { readonly focus: number; readonly cutOff: boolean },
): string {
  const { runway } = plan;
  const size = `${runwaySize(runway.length, units)} long and ${runwaySize(runway.width, units)} wide`;
  return [
    `Runway ${runway.name}, ${size}.`,
    ...sights.map(
      (sight) =>
        `${sightNames[sight.id]}: ${heightWords(sight, units)}, ${angleWords(sight)}. ${meaning(sight, units)}`,
    ),
    sightNote(plan, sights[1]!, units, picture),
  ].join(' ');
}
