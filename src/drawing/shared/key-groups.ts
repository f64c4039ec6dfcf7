import type { KeyPosition, Plan } from '../../flight/terms/plan.ts';
import { keyGrade, type MarkedGrade, markWords } from '../../words/cautions/grade-words.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { formatKeyHeight } from '../../words/keys/key-height.ts';
import { keyNames } from '../../words/keys/key-names.ts';
import { distance, type Point } from '../kit/geometry.ts';
import type { TextLine } from '../kit/text.ts';
import { keyLines } from '../pattern/pattern-words.ts';

/** A key position with its place on the page. */
export interface PlacedKey {
  readonly key: KeyPosition;
  readonly at: Point;
}

/** Key positions that one label names. */
export interface KeyGroup extends PlacedKey {
  readonly lines: readonly TextLine[];
  /** The gravest grade of its keys. */
  readonly grade: MarkedGrade | undefined;
}

/** mm: marks closer than this, with the same height in figures, are one mark to the eye. */
const together = 0.8;

/** The keys in the order flown; those that coincide (a base turn that starts at the downwind key) share a label. */
export function groupKeys(plan: Plan, placed: readonly PlacedKey[], units: PageUnits): KeyGroup[] {
  const groups: KeyGroup[] = [];
  for (const { key, at } of placed) {
    const same = groups.findIndex(
      (group) =>
        distance(group.at, at) < together &&
        formatKeyHeight(group.key, plan.cautions, units) === formatKeyHeight(key, plan.cautions, units) &&
        isPlain(group.key) &&
        isPlain(key),
    );
    const grade = keyGrade(plan, key.id);
    if (same === -1) groups.push({ key, at, lines: keyLines(plan, key, units), grade });
    else groups[same] = joined(groups[same]!, key, grade);
  }
  return groups.map((group) => ({ ...group, lines: [...group.lines, ...gradeLines(group.grade)] }));
}

/** What a label says about the square around its mark. */
export function gradeLines(grade: MarkedGrade | undefined): TextLine[] {
  return grade ? [{ text: markWords[grade], bold: grade === 'not-to-be-flown' }] : [];
}

/** Aim point and touchdown have words of their own. */
function isPlain({ id }: KeyPosition): boolean {
  return id !== 'aim-point' && id !== 'touchdown';
}

function joined(group: KeyGroup, { id }: KeyPosition, grade: MarkedGrade | undefined): KeyGroup {
  const names = group.lines.slice(0, -1);
  const last = names.at(-1)!;
  const added = { text: keyNames[id].toLowerCase() };
  const lines = [...names.slice(0, -1), { ...last, text: `${last.text},` }, added, group.lines.at(-1)!];
  const isGraver = group.grade === undefined || grade === 'not-to-be-flown';
  return { ...group, lines, grade: isGraver ? grade : group.grade };
}
