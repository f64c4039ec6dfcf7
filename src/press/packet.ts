import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Edition } from '../../components/context.ts';
import type { Plan } from '../flight/plan.ts';
import type { PageUnits } from '../units/page-units.ts';
import { documentHtml } from './document-html.ts';
import { hasClass, makeTableRooms, setText, takeObjective } from './document-tree.ts';
import { packetCautions } from './packet-cautions.ts';
import { pageCss } from './page-style.ts';
import { contentHeight, type Paper } from './paper.ts';
import { placeNotes } from './place-notes.ts';
import { settingOf, subjectLine } from './setting.ts';
import { workings } from './workings.ts';

/** What one packet is made from. */
export interface PacketInput {
  /** The lesson's title. */
  readonly title: string;
  /** The lesson as rendered and sanitized; it is not changed. */
  readonly body: readonly ElementContent[];
  /** The edition that `body` was rendered for. */
  readonly edition: Edition;
  readonly plan: Plan;
  readonly school: { readonly name: string; readonly cautions: readonly string[] };
  /** The airfield's local procedures. */
  readonly rules: readonly string[];
  readonly units: PageUnits;
  readonly paper: Paper;
  /** The date of the inputs. */
  readonly date: Date;
  readonly fingerprint: string;
}

/**
 * One lesson, computed for one aircraft and one wind, as a self-contained HTML document: the first page says for whom
 * it is and what to beware of, the last how its figures were worked out.
 */
export function packetHtml(input: PacketInput): string {
  const { title, edition, plan, school, units, paper, date, fingerprint } = input;
  const day = date.toISOString().slice(0, 10);
  const body = structuredClone([...input.body]);
  makeTableRooms(body);
  placeNotes(body);
  const { objective, rest } = takeObjective(withoutTitle(body, title));
  const last = workings(plan, units);
  makeTableRooms(last.children);
  const furniture = {
    title,
    subject: subjectLine(plan, units),
    origin: `${school.name} · ${editionNames[edition]} · ${day} · inputs ${fingerprint}`,
  };
  const content = h('body', { class: `edition-${edition}` }, [
    ...(edition === 'student' ? [ruledMargin(paper)] : []),
    h('header', { class: 'masthead' }, [
      h('p', { class: 'school' }, [
        h('span', school.name),
        h('span', `${editionNames[edition]} · ${day} · inputs ${fingerprint}`),
      ]),
      h('h1', title),
      h(
        'dl',
        { class: 'setting' },
        settingOf(plan, units).map(({ label, value, detail }) =>
          h('div', [h('dt', label), h('dd', [value, ' ', h('small', detail)])]),
        ),
      ),
    ]),
    h('main', [
      ...(objective.length === 0 ? [] : [h('div', { class: 'aim' }, objective)]),
      packetCautions(plan, school.cautions, input.rules),
      h('div', { class: 'lesson' }, rest),
      last,
    ]),
  ]);
  setText(content.children);
  const forWhom = edition === 'instructor' ? `, ${editionNames.instructor.toLowerCase()}` : '';
  return documentHtml(`${title} — ${furniture.subject}${forWhom}`, pageCss(paper, furniture), content);
}

const editionNames: Readonly<Record<Edition, string>> = {
  instructor: "Instructor's edition",
  student: "Student's edition",
};

/** mm between two lines to write on. */
const ruleSpacing = 9;

/** Lines to write on, which a browser repeats on every page; what is as wide as the page covers them. */
function ruledMargin(paper: Paper): Element {
  const count = Math.floor(contentHeight(paper) / ruleSpacing);
  return h(
    'div',
    { class: 'ruled-margin', ariaHidden: 'true' },
    Array.from({ length: count }, () => h('span')),
  );
}

/** A lesson that begins with its own title would print it twice. */
function withoutTitle(body: ElementContent[], title: string): ElementContent[] {
  const start = body.findIndex((node) => node.type === 'element');
  const first = body[start];
  if (first?.type !== 'element' || first.tagName !== 'h1' || hasClass(first, 'keep')) return body;
  const text = first.children.map((child) => (child.type === 'text' ? child.value : '')).join('');
  return text.trim() === title.trim() ? body.slice(start + 1) : body;
}
