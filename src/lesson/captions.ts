import type { Element, Root } from 'hast';
import { visit } from 'unist-util-visit';

export type Numbered = 'Figure' | 'Table';

/** Holds the place of the number in a caption, which is known only when all of the page is there. */
export function captionNumber(kind: Numbered): Element {
  const properties = { className: ['caption-number'], dataNumbered: kind };
  return { type: 'element', tagName: 'span', properties, children: [] };
}

/**
 * Writes the numbers of figures and tables, each kind counted from 1 in the order of the page. May be run again on a
 * longer page, or for a chapter of a book, whose number `before` goes in front: `Figure 5-3`.
 */
export function numberCaptions(tree: Root, before = ''): void {
  const counts = new Map<unknown, number>();
  visit(tree, 'element', (node) => {
    const kind = node.properties.dataNumbered;
    if (kind === undefined) return;
    const count = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, count);
    node.children = [{ type: 'text', value: `${kind}\u00a0${before}${count}` }];
  });
}
