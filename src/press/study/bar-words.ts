import { grades } from '../../flight/terms/grade.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { cautionsOf } from '../../words/cautions/grade-sentences.ts';
import { gradedSentence, gradeNames } from '../../words/cautions/grade-words.ts';
import { limitSource } from '../../words/cautions/limit-sources.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { changeWords, settingWords } from './setting-words.ts';
import type { Shown } from './shown.ts';

/** A caution in words: its grade and what was found, and where its limit comes from. */
export interface SaidCaution {
  readonly sentence: string;
  readonly source: string;
}

/** What the bar says about the setting that the page shows. */
export interface BarWords {
  readonly moved: boolean;
  /** One line, always in sight. */
  readonly headline: string;
  readonly detail: string;
  /** What came of the fault that is flown over it; undefined where there is none. */
  readonly fault: string | undefined;
  readonly cautions: readonly SaidCaution[];
  /** True where it is not to be flown. */
  readonly refused: boolean;
}

/** What the bar says about a setting beside the printed one; `end` is where the fault ends, once it is flown. */
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
      cautions: flown.plan ? gravestFirst(flown.plan, units) : [],
    };
  }
  const words = settingWords(flown.plan, units);
  return {
    moved: !isPrinted,
    refused: false,
    headline: `${isPrinted ? 'As printed' : 'Set here'}${gradeWords(flown.plan)}: ${words}`,
    detail: isPrinted ? '' : changeWords(flown.plan, printed, units),
    fault: fault === '' ? undefined : `Fault: ${end}, dashed.`,
    cautions: gravestFirst(flown.plan, units),
  };
}

/** `, beyond a limit of good practice`: for a plan that passes a limit. */
function gradeWords({ grade }: Plan): string {
  return grade === 'sound' || grade === 'worth-knowing' ? '' : `, ${gradeNames[grade]}`;
}

function gravestFirst(plan: Plan, units: PageUnits): SaidCaution[] {
  return grades.flatMap((grade) =>
    cautionsOf(plan, grade).map((caution) => ({
      sentence: gradedSentence(caution, plan, units),
      source: limitSource(caution, plan, units),
    })),
  );
}
