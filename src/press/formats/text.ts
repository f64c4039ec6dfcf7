import type { Element, ElementContent } from 'hast';
import { visit } from 'unist-util-visit';
import { unknown } from '../book/page-number.ts';
import { hasClass, textOf } from './document-tree.ts';
import type { Format } from './format.ts';
import type { PageDocument } from './page-document.ts';
import { tableText } from './text/table.ts';
import { drawingWords, isBlock, isSilent, wordsOf } from './text/words.ts';
import { hang, wrap } from './text/wrap.ts';

/** Characters: what a phone and a terminal show without cutting a line. */
const pageWidth = 78;

/**
 * Plain text, to be read aloud, searched, or compared with that of another build: a drawing is given by its
 * description.
 */
export const write: Format['write'] = (document) => documentText(document);

export function documentText({ title, body }: PageDocument): string {
  const isHead = (node: ElementContent) => node.type === 'element' && node.tagName === 'header';
  // What it is, and what it is computed for, comes before the bands that warn about it.
  const content = [...body.children.filter(isHead), ...body.children.filter((node) => !isHead(node))];
  const head = [underlined(wrap(title, pageWidth), '='), ...pagesNote(body)];
  return `${[...head, ...blocksOf(withoutTitle(content, title), pageWidth)].join('\n\n')}\n`;
}

/** The pages that a book refers its reader to. */
function pagesNote(body: Element): string[] {
  const pages = new Set<string>();
  visit(body, 'element', (node) => {
    if (hasClass(node, 'page-number')) pages.add(textOf(node));
  });
  if (pages.has(unknown)) return [`Without a browser no page is known: ${unknown} stands for each.`];
  return pages.size > 0 ? ['Page numbers are those of the print.'] : [];
}

/** The title of the document begins with that of its page, which is not repeated. */
function withoutTitle(content: readonly ElementContent[], title: string): ElementContent[] {
  const [head, ...rest] = content;
  if (head?.type !== 'element') return [...content];
  const isTitle = (node: ElementContent) =>
    node.type === 'element' && node.tagName === 'h1' && title.startsWith(textOf(node).trim());
  return [{ ...head, children: head.children.filter((node) => !isTitle(node)) }, ...rest];
}

/** Content as blocks, with an empty line between them. */
function blocksOf(content: readonly ElementContent[], width: number): string[] {
  const blocks: string[] = [];
  let inline: ElementContent[] = [];
  const endLine = () => {
    const words = wordsOf(inline);
    if (words !== '') blocks.push(wrap(words, width));
    inline = [];
  };
  for (const node of content) {
    if (isBlock(node)) {
      endLine();
      if (!isSilent(node)) blocks.push(...blockOf(node, width));
    } else inline.push(node);
  }
  endLine();
  return blocks.filter((block) => block !== '');
}

function blockOf(element: Element, width: number): string[] {
  const { tagName, children } = element;
  switch (tagName) {
    case 'h1':
    case 'h2': {
      const words = wrap(wordsOf(children), width);
      return [words === '' ? '' : underlined(words, tagName === 'h1' ? '=' : '-')];
    }
    case 'p':
      return [wrap(lineOf(element), width)];
    case 'ul':
      return [listText(children, width, () => '- ')];
    case 'ol': {
      // The entries of a list of contents already have the numbers of their chapters.
      if (children.some(isEntry)) return [listText(children, width, () => '- ')];
      const start = Number(element.properties.start ?? 1);
      const isLettered = element.properties.type === 'a';
      const mark = (at: number) => (isLettered ? String.fromCharCode(97 + at) : String(start + at));
      return [listText(children, width, (at) => `${mark(at)}. `)];
    }
    case 'dl':
      return [definitions(children, width)];
    case 'table':
      return [tableText(element, width)];
    case 'svg':
      return [wrap(drawingWords(element), width)];
    case 'pre':
      return [hang('    ', textOf(element).trimEnd())];
    case 'aside':
      return asideText(element, width);
    default:
      return blocksOf(children, width);
  }
}

/** An aside, under its name. */
function asideText({ children, properties }: Element, width: number): string[] {
  const blocks = blocksOf(children, width - 2).map((block) => hang('  ', block));
  return blocks.length === 0 ? [] : [`${String(properties.ariaLabel ?? 'Note')}:`, ...blocks];
}

/** Parts that a page sets apart, with no word between them, are set apart here too. */
function lineOf(element: Element): string {
  const { children } = element;
  const parts = children.filter((child) => child.type !== 'element' || !isSilent(child));
  if (parts.length < 2 || parts.some((part) => part.type !== 'element' || part.tagName === 'b')) {
    return wordsOf(children);
  }
  const words = parts.map((part) => wordsOf([part])).filter((each) => each !== '');
  return words.join(hasClass(element, 'entry') ? `, page\u00a0` : ' · ');
}

function underlined(text: string, sign: string): string {
  return `${text}\n${sign.repeat(Math.max(...text.split('\n').map((line) => line.length)))}`;
}

function listText(content: readonly ElementContent[], width: number, mark: (at: number) => string): string {
  const items = content.filter((child): child is Element => child.type === 'element');
  const texts = items.map((item, at) => {
    const sign = mark(at);
    const blocks = blocksOf(item.children, width - sign.length);
    const isLong = blocks.length > 1 && !isEntry(item);
    return { isLong, text: hang(sign, blocks.join(isLong ? '\n\n' : '\n')) };
  });
  return texts.map(({ text }) => text).join(texts.some(({ isLong }) => isLong) ? '\n\n' : '\n');
}

/** An entry of a list of contents: a place, its page, and perhaps the places in it. */
function isEntry(item: ElementContent): boolean {
  if (item.type !== 'element') return false;
  return item.children.some((child) => child.type === 'element' && hasClass(child, 'entry'));
}

/** Each name with its meaning, on a line of its own. */
function definitions(content: readonly ElementContent[], width: number): string {
  const entries: string[] = [];
  const collect = (nodes: readonly ElementContent[]): void => {
    for (const node of nodes) {
      if (node.type !== 'element') continue;
      if (node.tagName === 'dt') entries.push(`${wordsOf(node.children)}:`);
      else if (node.tagName === 'dd') entries[entries.length - 1] += ` ${wordsOf(node.children)}`;
      else collect(node.children);
    }
  };
  collect(content);
  return entries.map((entry) => wrap(entry, width, '  ')).join('\n');
}
