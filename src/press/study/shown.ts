import { grades } from '../../flight/terms/grade.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { cautionsOf } from '../../words/cautions/grade-sentences.ts';
import { gradedSentence, gradeNames } from '../../words/cautions/grade-words.ts';
import { limitSource } from '../../words/cautions/limit-sources.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Flown } from './fly-setting.ts';
import { changeWords, settingWords } from './setting-words.ts';
import type { BarState, SaidCaution } from './study-bar.ts';
import type { Setting } from './study-setting.ts';

/** The setting that the page shows: its flight, and what is drawn over it. */
export interface Shown {
  readonly setting: Setting;
  readonly request: PlanRequest;
  readonly flown: Flown;
  readonly isPrinted: boolean;
  /** `file/row`, or ''. */
  readonly fault: string;
}

/** The id of what is said of the fault that is flown. */
export const faultPanelId = 'study-fault-flown';

/** What the bar says of a setting beside the printed one; `end` is where the fault ends, once it is flown. */
export function barState(
  { flown, isPrinted, fault }: Shown,
  printed: Plan,
  units: PageUnits,
  end = 'being flown',
): BarState {
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
    fault: fault === '' ? undefined : { words: `Fault: ${end}, dashed.`, id: faultPanelId },
    cautions: gravestFirst(flown.plan, units),
  };
}

/** `, beyond a limit of good practice`: of a plan that passes a limit. */
function gradeWords({ grade }: Plan): string {
  return grade === 'sound' || grade === 'worth-knowing' ? '' : `, ${gradeNames[grade]}`;
}

function gravestFirst(plan: Plan, units: PageUnits): SaidCaution[] {
  return grades.flatMap((grade) =>
    cautionsOf(plan, grade).map((caution) => ({
      sentence: gradedSentence(caution, plan, units),
      source: limitSource(caution, plan),
    })),
  );
}
