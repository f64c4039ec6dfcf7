import { approaches } from '../../flight/approaches/approaches.ts';
import type { Grade } from '../../flight/terms/caution.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { gradeNames, markedGrades, markWords } from '../cautions/grade-words.ts';
import { formatDistance } from '../figures/format.ts';
import { capital } from '../figures/letter-case.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { alongWords } from '../keys/place-words.ts';
import { cautionWords } from '../winds/start-words.ts';

/** What a flight must be warned of, one line for each grade. */
export interface GradedLine {
  readonly grade: Grade;
  /** `Not to be flown`, `Beyond a limit`: as short as a mark. */
  readonly name: string;
  /** `turn to final complete at 120 ft, at least 300 ft; …`. */
  readonly words: string;
}

/** The gravest first; none for a sound plan. */
export function gradedLines({ cautions, aircraft }: Plan, units: PageUnits): GradedLine[] {
  return ([...markedGrades, 'worth-knowing'] as const).flatMap((grade) => {
    const found = cautions.filter((caution) => caution.grade === grade);
    if (found.length === 0) return [];
    const name = grade === 'worth-knowing' ? gradeNames[grade] : markWords[grade];
    return [{ grade, name: capital(name), words: cautionWords(found, aircraft, units) }];
  });
}

/**
 * Where the aim point of each flight lies and, for the 90, how far out its base key; said once where it is the same.
 * Undefined where there is neither.
 */
export function placeLine(plans: readonly Plan[], units: PageUnits): string | undefined {
  const aim = ofEach(plans, ({ keys }) => {
    const key = keys.find(({ id }) => id === 'aim-point');
    return key && alongWords(key, units);
  });
  const base = ofEach(plans, ({ approach, keys }) => {
    const key =
      approaches[approach].startsAt === 'base-key' ? keys.find(({ id }) => id === 'base-key') : undefined;
    return key && `${formatDistance(Math.abs(key.across), units)} out`;
  });
  const lines = [
    ...(base === undefined ? [] : [`Base key ${base}.`]),
    ...(aim === undefined ? [] : [`Aim point ${aim}.`]),
  ];
  return lines.length === 0 ? undefined : lines.join(' ');
}

/** `80 m before the spot (stopped 70 m)`. */
function ofEach(plans: readonly Plan[], words: (plan: Plan) => string | undefined): string | undefined {
  const [first, ...others] = plans.map((plan) => ({ plan, text: words(plan) }));
  if (first?.text === undefined) return undefined;
  const different = others.flatMap(({ plan, text }) =>
    text === undefined || text === first.text
      ? []
      : [`${plan.power === 'idle' ? 'idling' : 'stopped'} ${text.replace(/ (before the spot|out)$/, '')}`],
  );
  return `${first.text}${different.length === 0 ? '' : ` (${different.join(', ')})`}`;
}
