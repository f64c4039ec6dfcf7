import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { visit } from 'unist-util-visit';
import { components } from '../../../components/list.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import type { Day } from '../../lesson/day.ts';
import { gradeNames } from '../../words/cautions/grade-words.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { hasClass, makeTableRooms, takeObjective, textOf } from '../formats/document-tree.ts';
import { dayAsked } from './day-asked.ts';
import { packetCautions } from './packet-cautions.ts';
import { placeNotes } from './place-notes.ts';

/** A lesson as rendered for one plan. */
export interface LessonInput {
  /** The lesson's title. */
  readonly title: string;
  /** The lesson as rendered and sanitized; it is not changed. */
  readonly body: readonly ElementContent[];
  readonly plan: Plan;
  readonly school: { readonly name: string; readonly cautions: readonly string[] };
  /** The airfield's local procedures. */
  readonly rules: readonly string[];
  /** The day that the lesson asks for. */
  readonly day?: Day | undefined;
  readonly units: PageUnits;
}

/** What comes under the title of a packet or a chapter: the objective, the cautions, and the lesson itself. */
export function lessonParts({ title, body, plan, school, rules, day, units }: LessonInput): ElementContent[] {
  const content = structuredClone([...body]);
  if (plan.grade === 'not-to-be-flown') markCaptions(content);
  makeTableRooms(content);
  markLong(content);
  placeNotes(content);
  const { objective, rest } = takeObjective(withoutTitle(content, title));
  return [
    ...(objective.length === 0 ? [] : [h('div', { class: 'aim' }, objective)]),
    packetCautions({ plan, units, school, rules }, day && dayAsked(plan, day, units)),
    h('div', { class: 'lesson' }, rest),
  ];
}

/** Drawings and tables of the flight itself: each has its directive's name as a class. */
const ofTheFlight = components.filter(({ isOfTheFlight }) => isOfTheFlight).map(({ name }) => name);

/** Says in each of their captions that the flight is not to be flown: one may be copied without its page. */
function markCaptions(content: ElementContent[]): void {
  visit({ type: 'root', children: content } as Root, 'element', (node) => {
    if (!ofTheFlight.some((name) => hasClass(node, name))) return;
    visit(node, 'element', (caption) => {
      if (caption.tagName !== 'figcaption' && caption.tagName !== 'caption') return;
      const grade = 'not-to-be-flown';
      const behindNumber = caption.children[0]?.type === 'element' ? 1 : 0;
      caption.children.splice(
        behindNumber,
        0,
        { type: 'text', value: ' ' },
        h('span', { class: `grade-mark ${grade}` }, gradeNames[grade]),
      );
    });
  });
}

/** Characters in four lines of text. */
const fewLines = 300;

/**
 * A browser that prints leaves one line of a short paragraph alone on a page, whatever `widows` says: only longer
 * ones may be cut.
 */
function markLong(content: ElementContent[]): void {
  visit({ type: 'root', children: content } as Root, 'element', (node) => {
    if (node.tagName !== 'p' || node.properties.className !== undefined) return;
    if (textOf(node).length > fewLines) node.properties.className = ['long'];
  });
}

/** A lesson that begins with its own title would print it twice. */
function withoutTitle(body: ElementContent[], title: string): ElementContent[] {
  const start = body.findIndex((node) => node.type === 'element');
  const first = body[start];
  if (first?.type !== 'element' || first.tagName !== 'h1' || hasClass(first, 'keep')) return body;
  const text = first.children.map((child) => (child.type === 'text' ? child.value : '')).join('');
  return text.trim() === title.trim() ? body.slice(start + 1) : body;
}
