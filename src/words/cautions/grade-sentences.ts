import type { Caution, Grade } from '../../flight/terms/caution.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { formatWind } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { type CautionSubject, cautionSentence } from './caution-words.ts';
import { gradeNames } from './grade-words.ts';
import { remedySentence } from './remedy-words.ts';

// What is said about a grade where there is room for a sentence; its name, and the words at a key, are in
// `grade-words.ts`.

/** The cautions of one grade. */
export function cautionsOf({ cautions }: Pick<Plan, 'cautions'>, grade: Grade): readonly Caution[] {
  return cautions.filter((caution) => caution.grade === grade);
}

/**
 * All that is said about one grade of a plan: `Osier 15, runway 24, wind 330° 14 kt: not to be flown. The crosswind
 * is …`, and what would be flyable: `flyable`, or what the cautions say where that is left out.
 */
export function gradeSentence(
  plan: Plan,
  grade: Grade,
  units: PageUnits,
  flyable: readonly string[] = [],
): string {
  const found = cautionsOf(plan, grade);
  const ways = flyable.length > 0 ? flyable : remediesOf(found, plan, units);
  const sentences = [...found.map((caution) => cautionSentence(caution, plan, units)), ...ways];
  return `${settingName(plan, units)}: ${gradeNames[grade]}. ${sentences.join(' ')}`;
}

/** What would be flyable, each once. */
export function remediesOf(
  cautions: readonly Caution[],
  subject: CautionSubject,
  units: PageUnits,
): string[] {
  return [...new Set(cautions.flatMap((caution) => remedySentence(caution, subject, units) ?? []))];
}

/** Tells which of a lesson's plans it is: `Osier 15, runway 24, wind 330° 14 kt, engine idling`. */
export function settingName({ aircraft, runway, flown, power }: Plan, units: PageUnits): string {
  const { from, speed } = flown.surfaceWind;
  const engine = power === 'idle' ? 'engine idling' : 'engine stopped';
  return `${aircraft.name}, runway ${runway.name}, wind ${formatWind(from, speed, units)}, ${engine}`;
}

/** `1 packet beyond a limit of good practice, 2 not to be flown (not printed)`; undefined where there is nothing to say. */
export function countWords(counts: GradeCounts, one: string, refusedWords: string): string | undefined {
  const parts = [
    [counts.beyond, gradeNames['beyond-good-practice']],
    [counts.refused, `${gradeNames['not-to-be-flown']} (${refusedWords})`],
    [counts.shown, `${gradeNames['not-to-be-flown']} (shown as such)`],
    [counts.known, 'with something worth knowing'],
  ] as const;
  const said = parts.filter(([count]) => count > 0);
  if (said.length === 0) return undefined;
  const words = said.map(([count, what], at) =>
    at === 0 ? `${count} ${count === 1 ? one : `${one}s`} ${what}` : `${count} ${what}`,
  );
  return `${words.join(', ')}.`;
}

/** How many plans have which grade. */
export interface GradeCounts {
  readonly beyond: number;
  /** Not to be flown, and so not printed. */
  readonly refused: number;
  /** Not to be flown, in a lesson that shows such a plan. */
  readonly shown: number;
  readonly known: number;
}
