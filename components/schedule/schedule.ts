import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { z } from 'zod';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { textOf } from '../../src/lesson/headings.ts';
import { planParts } from '../../src/lesson/plan-parts.ts';
import { scheduleAdvice, scheduleLine } from '../../src/lesson/schedule-line.ts';
import { noBreakSpace } from '../../src/units/rounding.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

export const schedule = defineComponent<PacketContext, z.ZodType>({
  name: 'schedule',
  form: 'container',
  summary: 'How the time of the lesson is spent: a list of minutes and what is done, printed with its total.',
  attributes: z.strictObject({}),
  example: ':::schedule\n- 20 min: briefing\n- 40 min: flight\n- 15 min: debriefing\n:::',
  render: ({ children }) => [
    h('section', { className: ['part', 'schedule'] }, [
      h('h2', planParts.schedule),
      ...needsContent('schedule', children).map((child) => (isList(child) ? table(itemsOf(child)) : child)),
    ]),
  ],
});

interface Item {
  readonly minutes: number;
  readonly content: readonly ElementContent[];
}

function isList(node: ElementContent): node is Element {
  return node.type === 'element' && (node.tagName === 'ul' || node.tagName === 'ol');
}

function itemsOf(list: Element): Item[] {
  return list.children.filter((child) => child.type === 'element').map(itemOf);
}

/** @throws DirectiveError where an item does not begin with its minutes. */
function itemOf(item: Element): Item {
  const [first, ...rest] = inner(item);
  const line = first?.type === 'text' ? scheduleLine(first.value) : undefined;
  if (first?.type !== 'text' || !line) {
    throw new DirectiveError(`\`${textOf(item).trim()}\` has no time: ${scheduleAdvice}`);
  }
  return { minutes: line.minutes, content: [{ ...first, value: first.value.slice(line.textAt) }, ...rest] };
}

/** What the item says: for a loose list, the content of its first paragraph and then the rest. */
function inner({ children }: Element): ElementContent[] {
  const start = children.findIndex((child) => child.type === 'element' || child.value.trim() !== '');
  const first = children[start];
  const paragraph = first?.type === 'element' && first.tagName === 'p' ? first : undefined;
  return paragraph ? [...paragraph.children, ...children.slice(start + 1)] : children.slice(start);
}

function table(items: readonly Item[]): Element {
  const total = items.reduce((sum, { minutes }) => sum + minutes, 0);
  const cell = (minutes: number) =>
    h('th', { scope: 'row', className: ['number'] }, `${minutes}${noBreakSpace}min`);
  return h('table', { className: ['schedule'] }, [
    h('thead', [h('tr', [h('th', { scope: 'col', className: ['number'] }, 'Time'), head('What is done')])]),
    h('tbody', [
      ...items.map(({ minutes, content }) => h('tr', [cell(minutes), h('td', [...content])])),
      h('tr', { className: ['total'] }, [cell(total), h('td', 'in all')]),
    ]),
  ]);
}

function head(text: string): Element {
  return h('th', { scope: 'col' }, text);
}
