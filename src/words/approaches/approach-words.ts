import type { Plan } from '../../flight/terms/plan.ts';
import { gradeNames } from '../cautions/grade-words.ts';
import { formatWind } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { approachNames } from './approach-names.ts';

/** `180° approach to runway 24 at Fallow Reach, left-hand`. */
export function approachWords({ approach, runway, airfield, circuit }: Plan): string {
  return `${approachNames[approach].title} to runway ${runway.name} at ${airfield.name}, ${circuit}-hand`;
}

/** `surface wind 210° 12 kt, engine idling`; also says where the spot is not made, and where it is not to be flown. */
export function conditionWords(plan: Plan, units: PageUnits): string {
  const { from, speed } = plan.flown.surfaceWind;
  const wind = `surface wind ${formatWind(from, speed, units)}`;
  const engine = plan.power === 'idle' ? 'engine idling' : 'engine stopped';
  const grade = plan.grade === 'not-to-be-flown' ? `; ${gradeNames[plan.grade]}` : '';
  return `${wind}, ${engine}${plan.made ? grade : '; the spot is not made'}`;
}

/** The sentence under everything that is made from the aircraft's figures. */
export function sourceWords(plan: Plan, units: PageUnits): string {
  const source = plan.aircraft.source.trim().replace(/\.$/, '');
  return `Computed for ${plan.aircraft.name}, ${conditionWords(plan, units)}. Source of the aircraft's figures: ${source}.`;
}
