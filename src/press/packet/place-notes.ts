import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { hasClass } from '../formats/document-tree.ts';

/**
 * Puts each margin note where the page sets it beside the paragraph or list that it was written after: before that
 * paragraph or list, in one block with it. A note after a heading, a table or a figure, which reach into the margin,
 * goes with what follows. Works in place; a note, and the empty room for it in the other edition, are moved alike.
 */
export function placeNotes(content: ElementContent[]): void {
  for (const node of content) if (node.type === 'element' && !isNote(node)) placeNotes(node.children);
  for (let at = 0; at < content.length; at += 1) {
    const note = content[at]!;
    if (note.type !== 'element' || !isNote(note)) continue;
    const before = elementFrom(content, at - 1, -1);
    const after = elementFrom(content, at + 1, 1);
    if (before && hasMargin(before.element)) {
      content.splice(at, 1);
      content.splice(before.at, 1, noted([note], before.element));
      at -= 1;
    } else if (before && hasClass(before.element, 'noted')) {
      content.splice(at, 1);
      const last = before.element.children.length - 1;
      before.element.children.splice(last, 0, note);
      at -= 1;
    } else if (after && (/^h[1-6]$/.test(after.element.tagName) || hasClass(after.element, 'source'))) {
      content.splice(at, 1);
      content.splice(after.at, 0, note);
      at -= 1;
    } else if (after?.element.tagName === 'section' && startsWithHeading(after.element)) {
      content.splice(at, 1);
      const heading = elementFrom(after.element.children, 0, 1)!;
      after.element.children.splice(heading.at + 1, 0, note);
      placeNotes(after.element.children);
      at -= 1;
    } else if (after && hasMargin(after.element)) {
      content.splice(after.at, 1, noted([note], after.element));
      content.splice(at, 1);
      at -= 1;
    }
  }
}

/** What leaves the margin free: prose, lists, boxes. The source line under a table belongs to the table, and does not. */
function hasMargin(element: Element): boolean {
  if (hasClass(element, 'source')) return false;
  if (/^(p|ul|ol|dl|blockquote)$/.test(element.tagName)) return true;
  return hasClass(element, 'student') || hasClass(element, 'caution');
}

function isNote(element: Element): boolean {
  return hasClass(element, 'note');
}

/** A list is long and may be cut between pages; a paragraph stays with its note. */
function noted(notes: readonly Element[], block: Element): Element {
  const classes = block.tagName === 'p' ? ['noted', 'whole'] : ['noted'];
  return h('div', { className: classes }, [...notes, block]);
}

function startsWithHeading(section: Element): boolean {
  const first = elementFrom(section.children, 0, 1);
  return first !== undefined && /^h[1-6]$/.test(first.element.tagName);
}

function elementFrom(content: readonly ElementContent[], from: number, step: 1 | -1) {
  for (let at = from; at >= 0 && at < content.length; at += step) {
    const element = content[at]!;
    if (element.type === 'element') return { at, element };
  }
  return undefined;
}
