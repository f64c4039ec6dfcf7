import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { KeyId } from '../src/flight/terms/key.ts';
import type { Plan } from '../src/flight/terms/plan.ts';
import { keyGrade, markWords } from '../src/words/cautions/grade-words.ts';

/** A key position in a table's row; marked where a limit is passed there. */
export function markedKey(plan: Plan, id: KeyId, label: string): (string | Element)[] {
  const grade = keyGrade(plan, id);
  return grade ? [label, ' ', h('span', { className: ['grade-mark', grade] }, markWords[grade])] : [label];
}

/** A figure of the flight in a sentence: struck through where the plan is not to be flown, and read aloud as such. */
export function flownFigure(value: string, { grade }: Pick<Plan, 'grade'>): ElementContent[] {
  if (grade !== 'not-to-be-flown') return [{ type: 'text', value }];
  return [
    h('s', { className: ['not-to-be-flown'] }, [
      value,
      h('span', { className: ['sr-only'] }, ` (${markWords['not-to-be-flown']})`),
    ]),
  ];
}
