import type { Caution, Grade, PlanGrade } from '../../flight/terms/caution.ts';
import { gradeOf } from '../../flight/terms/grade.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { capital } from '../figures/letter-case.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { type CautionSubject, cautionSentence } from './caution-words.ts';

/** What a grade is called: on pages, drawings, screens and in the terminal alike. */
export const gradeNames: Readonly<Record<PlanGrade, string>> = {
  'not-to-be-flown': 'not to be flown',
  'beyond-good-practice': 'beyond a limit of good practice',
  'worth-knowing': 'worth knowing',
  sound: 'sound',
};

/** The grades that are marked at the key position they belong to. */
export type MarkedGrade = Exclude<Grade, 'worth-knowing'>;

/** The gravest first. */
export const markedGrades: readonly MarkedGrade[] = ['not-to-be-flown', 'beyond-good-practice'];

/** What is printed beside a mark at a key position. */
export const markWords: Readonly<Record<MarkedGrade, string>> = {
  'not-to-be-flown': gradeNames['not-to-be-flown'],
  'beyond-good-practice': 'beyond a limit',
};

/** The gravest grade of the cautions at a key position; undefined where none of them is marked. */
export function keyGrade({ cautions }: Pick<Plan, 'cautions'>, id: KeyId): MarkedGrade | undefined {
  const grade = gradeOf(cautions.filter(({ at }) => at === id));
  return grade === 'sound' || grade === 'worth-knowing' ? undefined : grade;
}

/** What the squares in a drawing mean, for the line under it; '' where it has none. */
export function markNote(plan: Pick<Plan, 'cautions' | 'keys'>): string {
  const found = new Set(plan.keys.map(({ id }) => keyGrade(plan, id)));
  const square: Readonly<Record<MarkedGrade, string>> = {
    'not-to-be-flown': ' Heavy square: not to be flown.',
    'beyond-good-practice': ' Thin square: beyond a limit of good practice.',
  };
  return markedGrades.map((grade) => (found.has(grade) ? square[grade] : '')).join('');
}

/** `Not to be flown: The crosswind is …`, a sentence for each caution that is marked, the gravest first. */
export function cautionSentences(plan: CautionSubject & Pick<Plan, 'cautions'>, units: PageUnits): string[] {
  return markedGrades.flatMap((grade) =>
    plan.cautions
      .filter((caution) => caution.grade === grade)
      .map((caution) => gradedSentence(caution, plan, units)),
  );
}

/** `Not to be flown: The crosswind is …`. */
export function gradedSentence(caution: Caution, subject: CautionSubject, units: PageUnits): string {
  return `${capital(gradeNames[caution.grade])}: ${cautionSentence(caution, subject, units)}`;
}
