import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Plan } from '../flight/plan.ts';
import type { PageUnits } from '../units/page-units.ts';
import { documentHtml } from './document-html.ts';
import { hasClass, makeTableRooms, setText, takeObjective } from './document-tree.ts';
import { packetCautions } from './packet-cautions.ts';
import { pageCss } from './page-style.ts';
import type { Paper } from './paper.ts';
import { settingOf, subjectLine } from './setting.ts';
import { workings } from './workings.ts';

/** What one packet is made from. */
export interface PacketInput {
  /** The lesson's title. */
  readonly title: string;
  /** The lesson as rendered and sanitized; it is not changed. */
  readonly body: readonly ElementContent[];
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
  const { title, plan, school, units, paper, date, fingerprint } = input;
  const day = date.toISOString().slice(0, 10);
  const body = structuredClone([...input.body]);
  makeTableRooms(body);
  const { objective, rest } = takeObjective(withoutTitle(body, title));
  const last = workings(plan, units);
  makeTableRooms(last.children);
  const furniture = {
    title,
    subject: subjectLine(plan, units),
    origin: `${school.name} · ${day} · inputs ${fingerprint}`,
  };
  const content = h('body', [
    h('header', { class: 'masthead' }, [
      h('p', { class: 'school' }, [h('span', school.name), h('span', `${day} · inputs ${fingerprint}`)]),
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
  return documentHtml(`${title} — ${furniture.subject}`, pageCss(paper, furniture), content);
}

/** A lesson that begins with its own title would print it twice. */
function withoutTitle(body: ElementContent[], title: string): ElementContent[] {
  const start = body.findIndex((node) => node.type === 'element');
  const first = body[start];
  if (first?.type !== 'element' || first.tagName !== 'h1' || hasClass(first, 'keep')) return body;
  const text = first.children.map((child) => (child.type === 'text' ? child.value : '')).join('');
  return text.trim() === title.trim() ? body.slice(start + 1) : body;
}
