import type { VFile } from 'vfile';
import { gradeNames } from '../drawing/grade-words.ts';
import { grades } from '../flight/grade.ts';
import type { Grade, Plan } from '../flight/plan.ts';
import type { YamlSource } from '../school/yaml-source.ts';
import { flyableWords } from './flyable-words.ts';
import { cautionsOf, gradeSentence, settingKeys, settingName } from './grade-words.ts';
import { keyAmong } from './lesson-messages.ts';
import type { Scenario } from './scenario.ts';

/** What is to be said of the grade of a plan. */
export interface GradeMessage {
  /** A `note` is what the lesson meant, or what is worth knowing. */
  readonly severity: 'error' | 'warning' | 'note';
  readonly rule: Grade | 'shows';
  readonly words: string;
  /** The keys of the front matter that it may come from, the likeliest first. */
  readonly keys: readonly string[];
}

/** A message for each grade that the cautions of a plan have, the gravest first; none of a sound one. */
export function gradeMessages(plan: Plan, { request, shows, units }: Scenario): GradeMessage[] {
  const severity: Readonly<Record<Grade, GradeMessage['severity']>> = {
    'not-to-be-flown': shows === 'not-to-be-flown' ? 'note' : 'error',
    'beyond-good-practice': 'warning',
    'worth-knowing': 'note',
  };
  const found = grades
    .filter((grade) => cautionsOf(plan, grade).length > 0)
    .map(
      (grade): GradeMessage => ({
        severity: severity[grade],
        rule: grade,
        words: gradeSentence(
          plan,
          grade,
          units,
          grade === plan.grade ? flyableWords(plan, request, units) : [],
        ),
        keys: settingKeys(plan, grade),
      }),
    );
  return shows === undefined || shows === plan.grade ? found : [flyable(plan, shows, units), ...found];
}

/** A lesson that says that it shows such a plan, and does not. */
function flyable(plan: Plan, shows: Grade, units: Scenario['units']): GradeMessage {
  return {
    severity: 'warning',
    rule: 'shows',
    words: `${settingName(plan, units)}: flyable, though the lesson says \`shows: ${shows}\`; ${gradeNames[plan.grade]}. Take \`shows\` out, or change the setting`,
    keys: ['shows'],
  };
}

/** Where the grades of a plan are said. */
export interface Told {
  readonly file: VFile;
  readonly source: YamlSource | undefined;
  /** By the key of the front matter that it goes before: what was asked for in place of the lesson's own. */
  readonly asked?: Readonly<Record<string, unknown>>;
}

/** Says it on the lesson's file: at the key that it comes from, unless that was asked for in another place. */
export function sayGrade({ severity, rule, words, keys }: GradeMessage, told: Told): void {
  const { file, source, asked = {} } = told;
  const key = keyAmong(keys, told, asked);
  const isTyped = source !== undefined && asked[key] === undefined;
  const message = isTyped
    ? source.warn(words, rule, [key])
    : file.message(words, { ruleId: rule, source: 'chalkwing' });
  message.fatal = severity === 'error' ? true : severity === 'warning' ? false : undefined;
}
