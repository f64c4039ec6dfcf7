import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Plan } from '../../flight/terms/plan.ts';
import { cautionLine } from '../../words/cautions/caution-line.ts';
import { cautionsOf, remediesOf } from '../../words/cautions/grade-sentences.ts';
import { gradeNames, type MarkedGrade, markedGrades } from '../../words/cautions/grade-words.ts';
import { shortSource } from '../../words/cautions/limit-sources.ts';
import { capital } from '../../words/figures/letter-case.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';

/**
 * The bands above a title block, the gravest first: a line for each limit that is passed, with where the limit comes
 * from; and, for what is not to be flown, what would be flyable (`flyable`, or what the cautions say where that is
 * left out). Empty where no limit is passed.
 */
export function gradeBands(plan: Plan, units: PageUnits, flyable: readonly string[] = []): Element[] {
  return markedGrades.flatMap((grade) => band(plan, grade, units, flyable) ?? []);
}

function band(
  plan: Plan,
  grade: MarkedGrade,
  units: PageUnits,
  flyable: readonly string[],
): Element | undefined {
  const found = cautionsOf(plan, grade);
  if (found.length === 0) return undefined;
  const name = capital(gradeNames[grade]);
  const ways = grade === plan.grade && flyable.length > 0 ? flyable : remediesOf(found, plan, units);
  const lines = found.map((caution) =>
    h('li', [
      `${capital(cautionLine(caution, plan.aircraft, units))} `,
      h('span', { class: 'from' }, shortSource(caution, plan, units)),
    ]),
  );
  return h('section', { class: `grade-band ${grade}`, ariaLabel: name }, [
    h('p', { class: 'grade-name' }, name),
    h('ul', lines),
    ...ways.map((way) => h('p', { class: 'remedy' }, way)),
  ]);
}

/** How many characters the band at the head of a page has room for. */
const longest = 110;

/**
 * What is printed at the head of every page of a plan that is not to be flown: `NOT TO BE FLOWN: crosswind 14 kt, at
 * most 9 kt`. Undefined for every other plan.
 */
export function pageBand(plan: Plan, units: PageUnits): string | undefined {
  const lines = cautionsOf(plan, 'not-to-be-flown').map((caution) =>
    cautionLine(caution, plan.aircraft, units),
  );
  if (lines.length === 0) return undefined;
  const head = `${gradeNames['not-to-be-flown'].toUpperCase()}: `;
  let room = lines.length;
  while (room > 1 && `${head}${lines.slice(0, room).join('; ')}`.length > longest) room -= 1;
  const more = lines.length - room;
  return `${head}${lines.slice(0, room).join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
}

/** The same on a screen, which has no pages: it stays in sight. */
export function screenBand(plan: Plan, units: PageUnits): Element[] {
  const words = pageBand(plan, units);
  return words === undefined ? [] : [h('p', { class: 'page-band', ariaHidden: 'true' }, words)];
}
