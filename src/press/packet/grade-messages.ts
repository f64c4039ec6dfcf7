import type { Grade } from '../../flight/terms/caution.ts';
import { grades } from '../../flight/terms/grade.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { flyableWords } from '../../words/cautions/flyable-words.ts';
import { cautionsOf, gradeSentence, settingName } from '../../words/cautions/grade-sentences.ts';
import { gradeNames } from '../../words/cautions/grade-words.ts';
import { settingKeys } from './grade-keys.ts';
import type { PlanMessage } from './say-of-plan.ts';
import type { Scenario } from './scenario.ts';

/** A message for each grade among a plan's cautions, the gravest first; none for a sound plan. */
export function gradeMessages(plan: Plan, { request, shows, units }: Scenario): PlanMessage[] {
  const severity: Readonly<Record<Grade, PlanMessage['severity']>> = {
    'not-to-be-flown': shows === 'not-to-be-flown' ? 'note' : 'error',
    'beyond-good-practice': 'warning',
    'worth-knowing': 'note',
  };
  const found = grades
    .filter((grade) => cautionsOf(plan, grade).length > 0)
    .map(
      (grade): PlanMessage => ({
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

/** For a lesson that says it shows such a plan and does not. */
function flyable(plan: Plan, shows: Grade, units: Scenario['units']): PlanMessage {
  return {
    severity: 'warning',
    rule: 'shows',
    words: `${settingName(plan, units)}: flyable, though the lesson says \`shows: ${shows}\`; ${gradeNames[plan.grade]}. Take \`shows\` out, or change the setting`,
    keys: ['shows'],
  };
}
