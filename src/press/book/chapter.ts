import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { visit } from 'unist-util-visit';
import { type Simplification, simplifications } from '../../flight/questions/simplifications.ts';
import type { Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { numberCaptions } from '../../lesson/captions.ts';
import { planParts } from '../../lesson/plan-parts.ts';
import { flyableWords } from '../../words/cautions/flyable-words.ts';
import { hasClass, setText, textOf } from '../formats/document-tree.ts';
import { gradeBands } from '../packet/grade-bands.ts';
import { type LessonInput, lessonParts } from '../packet/lesson-parts.ts';
import { once } from '../packet/once.ts';
import { prefixIds } from '../packet/prefix-ids.ts';
import { settingList } from '../packet/sheet-parts.ts';

/** A place in the book that other pages refer the reader to. */
interface Place {
  readonly id: string;
  readonly text: string;
}

/** A finished chapter, with what the rest of the book says about it. */
export interface Chapter {
  readonly id: string;
  /** Undefined for the pages about an aircraft, which are not numbered. */
  readonly number: number | undefined;
  readonly title: string;
  readonly plan: Plan;
  /** The size of each simplification in the plan; worked out when first asked for. */
  readonly sizes: () => readonly Simplification[];
  /** The chapter's own `section`. */
  readonly section: Element;
  readonly sections: readonly Place[];
  readonly figures: readonly Place[];
  readonly standards: readonly Place[];
  /** Where the standards are graded, and the headings under which questions are asked. */
  readonly debriefs: readonly string[];
  readonly exercises: readonly string[];
}

export interface ChapterInput extends LessonInput {
  readonly id: string;
  readonly number: number | undefined;
  /** What the plan was asked for. */
  readonly request: PlanRequest;
}

/** A chapter while ids can still be added to it. */
export interface Draft {
  readonly input: ChapterInput;
  readonly parts: ElementContent[];
}

/**
 * Makes a lesson, rendered for one plan, part of a book: its ids and the numbers of its figures become those of the
 * book.
 */
export function draftChapter(input: ChapterInput): Draft {
  const { id, number } = input;
  const body: Root = { type: 'root', children: structuredClone([...input.body]) };
  numberCaptions(body, number === undefined ? `${id.toUpperCase()}-` : `${number}-`);
  // Cautions belong to an approach: the pages about an aircraft fly none.
  const parts = lessonParts({ ...input, body: body.children as ElementContent[] }).filter(
    (part) => number !== undefined || part.type !== 'element' || !hasClass(part, 'packet-cautions'),
  );
  prefixIds(parts, `${id}-`);
  return { input, parts };
}

/** Labels of what the pages about an aircraft are computed for: no approach is flown on them. */
const ofTheAircraft = [
  'Aircraft',
  'Mass',
  'Power setting',
  'Airfield',
  'Air at the field',
  'Density altitude',
];

export function finishChapter({ input, parts }: Draft): Chapter {
  const { id, number, title, plan, request, units } = input;
  const section = h('section', { class: ['chapter', id], ariaLabelledBy: id }, [
    // No approach is flown on the pages about an aircraft.
    ...(number === undefined ? [] : gradeBands(plan, units, flyableWords(plan, request, units))),
    h('header', { class: 'masthead' }, [
      h(
        'h1',
        { id },
        number === undefined ? title : [h('span', { class: 'chapter-number' }, `${number}`), ` ${title}`],
      ),
      settingList(plan, units, number === undefined ? ofTheAircraft : undefined),
    ]),
    ...parts,
  ]);
  setText([section]);
  const sizes = once(() => simplifications(request));
  return { id, number, title, plan, sizes, section, ...survey(parts) };
}

/** Headings that every lesson has: a list of contents that names them in each chapter says nothing. */
const planned = new Set<string>(['Cautions', ...Object.values(planParts)]);

function survey(parts: readonly ElementContent[]) {
  const sections: Place[] = [];
  const figures: Place[] = [];
  const standards: Place[] = [];
  const debriefs: string[] = [];
  const exercises: string[] = [];
  let heading: string | undefined;
  const root: Root = { type: 'root', children: [...parts] };
  visit(root, 'element', (node) => {
    const id = node.properties.id;
    if (node.tagName === 'section' && hasClass(node, 'standards')) standards.push(...standardsOf(node));
    if (typeof id !== 'string') return;
    if (node.tagName === 'h2') heading = id;
    if (node.tagName === 'h2' && !planned.has(textOf(node).trim()))
      sections.push({ id, text: textOf(node).trim() });
    if (node.tagName === 'figure') figures.push({ id, text: captionOf(node) });
    if (node.tagName === 'table' && hasClass(node, 'debrief-grades')) debriefs.push(id);
    if (hasClass(node, 'exercises')) exercises.push(heading ?? id);
  });
  return { sections, figures, standards, debriefs, exercises };
}

/** Each line of the lesson's standards; the heading above it can be referred to. */
function standardsOf(section: Element): Place[] {
  const heading = section.children.find(
    (child): child is Element => child.type === 'element' && child.tagName === 'h2',
  );
  const lines: Place[] = [];
  visit(section, 'element', (node) => {
    if (node.tagName === 'li') lines.push({ id: String(heading?.properties.id), text: textOf(node).trim() });
  });
  return lines;
}

/** The caption without its source, up to its first full stop. */
function captionOf(figure: Element): string {
  let text = '';
  visit(figure, 'element', (node) => {
    if (node.tagName !== 'figcaption') return;
    const said = node.children.filter((child) => child.type !== 'element' || !hasClass(child, 'source'));
    text = said.map(textOf).join('').trim();
  });
  return text.replace(/\.(\s.*)?$/s, '');
}
