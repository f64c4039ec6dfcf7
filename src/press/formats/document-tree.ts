import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { SKIP, visit } from 'unist-util-visit';

/** The text of an element and everything in it. */
export function textOf(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  return node.type === 'element' ? node.children.map(textOf).join('') : '';
}

export function hasClass(element: Element, name: string): boolean {
  const { className } = element.properties;
  return Array.isArray(className) ? className.includes(name) : className === name;
}

/**
 * Content as a tree that a visitor can walk; it shares the list, so what is replaced in the tree is replaced in
 * `content`.
 */
function rootOf(content: ElementContent[]): Root {
  return { type: 'root', children: content };
}

/**
 * A table with more rows than this, or with several rows and more characters than this, may be cut between rows: kept
 * whole it would leave half a page empty.
 */
const longTable = { rows: 14, several: 6, characters: 1200 };

/**
 * Puts every table into a room of its own: on a narrow screen the room scrolls instead of the page, and can be
 * reached by keyboard; on paper the room is kept whole. Works in place.
 */
export function makeTableRooms(content: ElementContent[]): void {
  visit(rootOf(content), 'element', (node, index, parent) => {
    if (node.tagName !== 'table' || index === undefined || parent === undefined) return;
    const caption = node.children.find((child) => child.type === 'element' && child.tagName === 'caption');
    let rows = 0;
    visit(node, 'element', (row) => {
      if (row.tagName === 'tr') rows += 1;
    });
    const label = caption === undefined ? 'Table' : textOf(caption);
    const isLong =
      rows > longTable.rows || (rows > longTable.several && textOf(node).length > longTable.characters);
    const isWhole = String(node.properties.style ?? '').includes('break-inside:avoid');
    const room = {
      class: isLong && !isWhole ? 'table-room long' : 'table-room',
      role: 'group',
      ariaLabel: label,
    };
    parent.children[index] = h('div', { ...room, tabIndex: 0 }, [node]);
    return SKIP;
  });
}

/**
 * Takes the lesson's objective off the front of its body, if the lesson begins with one: the section that the
 * directive makes, or a heading "Objective" with what follows up to the next heading.
 */
export function takeObjective(body: readonly ElementContent[]): {
  objective: ElementContent[];
  rest: ElementContent[];
} {
  const start = body.findIndex((node) => node.type === 'element');
  const first = body[start];
  if (first?.type !== 'element') return { objective: [], rest: [...body] };
  if (hasClass(first, 'objective')) return { objective: [first], rest: body.slice(start + 1) };
  if (!/^h[1-6]$/.test(first.tagName) || !/^objectives?$/i.test(textOf(first).trim())) {
    return { objective: [], rest: [...body] };
  }
  const next = body.findIndex(
    (node, at) => at > start && node.type === 'element' && /^(h[1-6]|section)$/.test(node.tagName),
  );
  const end = next === -1 ? body.length : next;
  return { objective: body.slice(start, end), rest: body.slice(end) };
}

const spaceBeforeUnit =
  /(?<=\d) (?=(?:ft|m|km|mm|cm|kt|km\/h|mph|m\/s|ft\/min|kg|lb|hPa|°C|s|min|NM|%)(?![\p{L}\d]))/gu;
/** Typewriter quotation marks around words, within one line of text; those that mean inches and minutes are left alone. */
const quoted = /(?<=^|[\s(])"(?=[\p{L}\d])([^"]*[\p{L}\d.,!?…])"/gu;
const apostrophe = /(?<=\p{L})'(?=\p{L})|(?<=\p{L}s)'(?=\s)/gu;

/**
 * Sets the text as a printer would: no line ends between a number and its unit, quotation marks and apostrophes are
 * real ones. Code is left as typed, and a drawing as it was measured. Works in place.
 */
export function setText(content: ElementContent[]): void {
  visit(rootOf(content), (node) => {
    if (node.type === 'element' && /^(pre|code|style|script|svg)$/.test(node.tagName)) return SKIP;
    if (node.type !== 'text') return;
    node.value = node.value
      .replace(spaceBeforeUnit, '\u00a0')
      .replace(quoted, '“$1”')
      .replace(apostrophe, '’');
  });
}
