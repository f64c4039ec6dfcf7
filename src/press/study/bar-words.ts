import { grades } from '../../flight/terms/grade.ts';
import type { Caution, Plan } from '../../flight/terms/plan.ts';
import { gradeNames } from '../../words/cautions/grade-words.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { cautionsOf } from '../packet/grade-words.ts';
import { changeWords, settingWords } from './setting-words.ts';
import type { Shown } from './shown.ts';

/** What the bar says of the setting that the page shows. */
export interface BarWords {
  readonly moved: boolean;
  /** One line, always in sight. */
  readonly headline: string;
  readonly detail: string;
  /** What came of the fault that is flown over it; undefined for none. */
  readonly fault: string | undefined;
  readonly cautions: readonly Pick<Caution, 'message' | 'source' | 'grade'>[];
  /** True where it is not to be flown. */
  readonly refused: boolean;
}

/** What the bar says of a setting beside the printed one; `end` is where the fault ends, once it is flown. */
export function barWords(
  { flown, isPrinted, fault }: Shown,
  printed: Plan,
  units: PageUnits,
  end = 'being flown',
): BarWords {
  if (!flown.given) {
    return {
      moved: true,
      refused: true,
      headline: flown.plan ? 'This setting is not to be flown' : 'There is no flight of this setting',
      detail: `${flown.why} No figure is given for it.`,
      fault: undefined,
      cautions: flown.plan ? gravestFirst(flown.plan) : [],
    };
  }
  const words = settingWords(flown.plan, units);
  return {
    moved: !isPrinted,
    refused: false,
    headline: `${isPrinted ? 'As printed' : 'Set here'}${gradeWords(flown.plan)}: ${words}`,
    detail: isPrinted ? '' : changeWords(flown.plan, printed, units),
    fault: fault === '' ? undefined : `Fault: ${end}, dashed.`,
    cautions: gravestFirst(flown.plan),
  };
}

/** `, beyond a limit of good practice`: of a plan that passes a limit. */
function gradeWords({ grade }: Plan): string {
  return grade === 'sound' || grade === 'worth-knowing' ? '' : `, ${gradeNames[grade]}`;
}

function gravestFirst(plan: Plan): Plan['cautions'] {
  return grades.flatMap((grade) => cautionsOf(plan, grade));
}
