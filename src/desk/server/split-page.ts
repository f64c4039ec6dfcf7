import { createHash } from 'node:crypto';
import type { Element } from 'hast';
import { htmlOf, htmlPieces, tagsOf } from '../../press/formats/document-html.ts';
import { hasClass } from '../../press/formats/document-tree.ts';
import type { PageDocument } from '../../press/formats/page-document.ts';
import { fontFaceCss } from '../../press/paper/fonts.ts';
import { sheetCss } from '../../press/paper/page-style.ts';
import type { Paper } from '../../press/paper/paper.ts';
import type { DeskPage, Part, Style } from '../api.ts';

/**
 * Cuts a packet's document into the pieces that the desk's page replaces one by one; put together again they are the
 * HTML that is printed. `have`: keys of pieces that need not be sent.
 */
export function splitPage(document: PageDocument, paper: Paper, have: ReadonlySet<string>): DeskPage {
  const { title, css, body } = document;
  const { start, middle, end } = htmlPieces(document);
  const [head, last] = [fontFaceCss(), sheetCss(paper)];
  const cut =
    css.startsWith(head) && css.endsWith(last)
      ? [head, css.slice(head.length, css.length - last.length), last]
      : [css];
  return {
    title,
    start,
    styles: cut.map((part): Style => {
      const key = part === head ? fontsKey(head) : keyOf(part);
      return have.has(key) ? { key } : { key, css: part };
    }),
    middle,
    body: partOf(body, '', have),
    end,
  };
}

/**
 * Elements that are opened up: the page, its parts, the lesson, and those of its sections that hold a drawing or a
 * table beside words.
 */
function isOpened(element: Element): boolean {
  const classes = (names: readonly string[]) => names.some((name) => hasClass(element, name));
  switch (element.tagName) {
    case 'body':
    case 'main':
      return true;
    case 'div':
      return classes(['lesson']);
    case 'section':
      return classes(['part', 'workings']);
    default:
      return false;
  }
}

/** `behind`: the blank text after the element, which goes with it. */
function partOf(element: Element, behind: string, have: ReadonlySet<string>): Part {
  const inner = isOpened(element) ? childrenOf(element) : undefined;
  if (!inner) {
    const html = htmlOf(element) + behind;
    const key = keyOf(html);
    return have.has(key) ? { key } : { key, html };
  }
  const { open, close } = tagsOf(element);
  return {
    open: open + inner.before,
    parts: inner.children.map((child) => partOf(child.element, child.behind, have)),
    close: close + behind,
  };
}

interface Children {
  /** Blank text. */
  readonly before: string;
  readonly children: readonly { readonly element: Element; readonly behind: string }[];
}

/** The elements directly inside one. Undefined where there are none, or where there are words between them. */
function childrenOf({ children }: Element): Children | undefined {
  let before = '';
  const found: { element: Element; behind: string }[] = [];
  for (const child of children) {
    const last = found.at(-1);
    if (child.type === 'element') found.push({ element: child, behind: '' });
    else if (child.type !== 'text' || child.value.trim() !== '') return undefined;
    else if (last) last.behind += child.value;
    else before += child.value;
  }
  return found.length === 0 ? undefined : { before, children: found };
}

/** 16 hexadecimal digits of SHA-256: two of a page's few hundred pieces never share one. */
function keyOf(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}

let ofFonts: string | undefined;

/** They are half a megabyte, and always the same. */
function fontsKey(css: string): string {
  ofFonts ??= keyOf(css);
  return ofFonts;
}
