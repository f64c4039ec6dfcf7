import type { Element, ElementContent, Root, Text } from 'hast';
import { h } from 'hastscript';
import { EXIT, SKIP, visit } from 'unist-util-visit';
import { hasClass, textOf } from '../formats/document-tree.ts';
import type { Term } from './terms.ts';

/** Where a term is written about: ids, in the order of the book. */
export interface IndexEntry {
  readonly term: string;
  readonly ids: readonly string[];
}

interface Block {
  readonly element: Element;
  readonly text: string;
}

/** More places than this for one term help no reader. */
const mostPlaces = 12;
const headings = /^h[2-4]$/;

/**
 * Finds the terms in the sections of a book, and names the blocks that have them: in each section the first, and of
 * the sections those that say most about the term. What only one edition has (notes, answers) and what is drawn is
 * not searched: both editions have the same index. Gives an id, in place, to each word that is referred to, because a
 * table or a paragraph may run over to the next page. Each id begins with `prefix`.
 */
export function indexPlaces(
  content: readonly ElementContent[],
  terms: readonly Term[],
  prefix: string,
): IndexEntry[] {
  const sections = sectionsOf(content);
  let named = 0;
  const idOf = ({ element }: Block, pattern: RegExp): string => {
    named += 1;
    const id = `${prefix}${named}`;
    if (markWord(element, pattern, id)) return id;
    element.properties.id ??= id;
    return element.properties.id as string;
  };
  return terms.flatMap(({ term, also = [] }) => {
    const pattern = anyOf([term, ...also]);
    const found = sections.flatMap((blocks, at) => {
      const said = blocks.filter(({ text }) => pattern.test(text));
      return said.length > 0 ? [{ at, said, weight: weightOf(blocks, pattern) }] : [];
    });
    const most = [...found].sort((a, b) => b.weight - a.weight || a.at - b.at).slice(0, mostPlaces);
    const ids = most
      .sort((a, b) => a.at - b.at)
      .flatMap(({ said }) => said.map((block) => idOf(block, pattern)));
    return ids.length === 0 ? [] : [{ term, ids }];
  });
}

/** Gives an id to the first place that matches the pattern; false where no single piece of text has all of it. */
function markWord(element: Element, pattern: RegExp, id: string): boolean {
  let isMarked = false;
  visit(element, 'text', (node: Text, index, parent) => {
    const found = pattern.exec(node.value);
    if (!found || index === undefined || !parent) return undefined;
    const [before, after] = [
      node.value.slice(0, found.index),
      node.value.slice(found.index + found[0].length),
    ];
    const pieces: ElementContent[] = [{ type: 'text', value: before }, h('span', { id }, found[0])];
    parent.children.splice(index, 1, ...pieces, { type: 'text', value: after });
    isMarked = true;
    return EXIT;
  });
  return isMarked;
}

/** What is under one heading belongs together. */
function sectionsOf(content: readonly ElementContent[]): Block[][] {
  const sections: Block[][] = [[]];
  const root: Root = { type: 'root', children: [...content] };
  visit(root, 'element', (element) => {
    if (hasClass(element, 'note') || hasClass(element, 'exercises') || hasClass(element, 'packet-cautions'))
      return SKIP;
    if (!/^(h[2-4]|p|li|table|figcaption|dd)$/.test(element.tagName)) return undefined;
    if (element.tagName === 'h2') sections.push([]);
    const text = textOf(element);
    if (text.trim() !== '') sections.at(-1)!.push({ element, text });
    return SKIP;
  });
  return sections;
}

/** A heading that names the term says more about it than a line that uses it. */
function weightOf(blocks: readonly Block[], pattern: RegExp): number {
  const every = new RegExp(pattern, 'giu');
  return blocks.reduce((sum, { element, text }) => {
    const count = [...text.matchAll(every)].length;
    return sum + (headings.test(element.tagName) ? 20 * count : count);
  }, 0);
}

function anyOf(forms: readonly string[]): RegExp {
  const words = forms
    .map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/ /g, '\\s'))
    .join('|');
  return new RegExp(`(?<![\\p{L}\\p{N}-])(?:${words})(?![\\p{L}\\p{N}-])`, 'iu');
}
