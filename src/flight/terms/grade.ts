import type { Caution, Grade, PlanGrade } from './caution.ts';

/** The grades, the gravest first. */
export const grades: readonly Grade[] = ['not-to-be-flown', 'beyond-good-practice', 'worth-knowing'];

/** The gravest grade among cautions; `sound` where there are none. Everything that prints or speaks of a plan asks here. */
export function gradeOf(cautions: readonly Pick<Caution, 'grade'>[]): PlanGrade {
  return grades.find((grade) => cautions.some((caution) => caution.grade === grade)) ?? 'sound';
}
