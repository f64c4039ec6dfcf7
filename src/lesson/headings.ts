import type { Element, Nodes, Root } from 'hast';
import { visit } from 'unist-util-visit';

/** Gives every heading without an id one made from its words: the same words, the same id, with `-2` for the second. */
export function nameHeadings(tree: Root): void {
  const taken = new Set<string>();
  visit(tree, 'element', (node) => {
    if (typeof node.properties.id === 'string') taken.add(node.properties.id);
  });
  visit(tree, 'element', (node) => {
    if (!/^h[1-6]$/.test(node.tagName) || node.properties.id) return;
    const base = slug(textOf(node));
    let id = base;
    for (let count = 2; taken.has(id); count += 1) id = `${base}-${count}`;
    taken.add(id);
    node.properties.id = id;
  });
}

/** The words in lower case with hyphens between; `section` where there are none. */
function slug(text: string): string {
  const words = text
    .normalize('NFKC')
    .toLowerCase()
    .match(/[\p{Letter}\p{Mark}\p{Number}]+/gu);
  return words?.join('-') ?? 'section';
}

/** The ids that a link inside the packet can lead to. */
export function idsIn(tree: Root): Set<string> {
  const ids = new Set<string>();
  visit(tree, 'element', (node: Element) => {
    if (typeof node.properties.id === 'string') ids.add(node.properties.id);
  });
  return ids;
}

/** The text of a node and everything in it. */
export function textOf(node: Nodes): string {
  if (node.type === 'text') return node.value;
  return 'children' in node ? node.children.map(textOf).join('') : '';
}
