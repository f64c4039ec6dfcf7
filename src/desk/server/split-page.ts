import { createHash } from 'node:crypto';
import { fontFaceCss } from '../../press/paper/fonts.ts';
import { sheetCss } from '../../press/paper/page-style.ts';
import type { Paper } from '../../press/paper/paper.ts';
import type { DeskPage, Part, Style } from '../api.ts';

/**
 * Cuts a packet's document into the pieces that the desk's page replaces one by one; put together again they are the
 * same document. `have`: keys of pieces that need not be sent.
 */
export function splitPage(html: string, paper: Paper, have: ReadonlySet<string>): DeskPage {
  const css = between(html, '<style>', '</style>');
  const body = { start: html.indexOf('<body', css.end), end: html.lastIndexOf('</body>') + '</body>'.length };
  const [head, last] = [fontFaceCss(), sheetCss(paper)];
  const text = html.slice(css.start, css.end);
  const cut =
    text.startsWith(head) && text.endsWith(last)
      ? [head, text.slice(head.length, text.length - last.length), last]
      : [text];
  return {
    title: unescaped(between(html, '<title>', '</title>').text),
    start: html.slice(0, css.start),
    styles: cut.map((part): Style => {
      const key = part === head ? fontsKey(head) : keyOf(part);
      return have.has(key) ? { key } : { key, css: part };
    }),
    middle: html.slice(css.end, body.start),
    body: partOf(html.slice(body.start, body.end), have),
    end: html.slice(body.end),
  };
}

function between(html: string, before: string, after: string) {
  const start = html.indexOf(before) + before.length;
  const end = html.indexOf(after, start);
  return { start, end, text: html.slice(start, end) };
}

/** Opened up: the page, its parts, the lesson, and the sections of one that hold a drawing or a table beside words. */
const opened = /^<(body|main|div class="lesson"|section class="(part|workings)[ "])/;

function partOf(html: string, have: ReadonlySet<string>): Part {
  const elements = opened.test(html) ? childrenOf(html) : undefined;
  if (!elements) {
    const key = keyOf(html);
    return have.has(key) ? { key } : { key, html };
  }
  const { open, children, close } = elements;
  return { open, parts: children.map((child) => partOf(child, have)), close };
}

interface Children {
  readonly open: string;
  readonly children: readonly string[];
  readonly close: string;
}

const voids = new Set('area base br col embed hr img input link meta source track wbr'.split(' '));
/** A tag with its attributes, in whose quotes a `>` may stand; or a comment. */
const tags = /<!--[\s\S]*?-->|<(\/?)([a-zA-Z][^\s/>]*)(?:[^>"']|"[^"]*"|'[^']*')*>/g;

/**
 * The elements directly in one, each with the blank text behind it. Undefined where words stand between them. Our own
 * writer closes every element that it opens, and so do the drawings.
 */
function childrenOf(html: string): Children | undefined {
  const starts: number[] = [];
  let depth = 0;
  let wordsFrom = 0;
  let last = html.length;
  for (const { 0: tag, 1: slash, 2: name, index } of html.matchAll(tags)) {
    if (name === undefined) continue;
    if (depth === 1 && html.slice(wordsFrom, index).trim() !== '') return undefined;
    if (slash === '/') {
      depth -= 1;
      if (depth === 0) last = index;
    } else {
      if (depth === 1) starts.push(index);
      if (!tag.endsWith('/>') && !voids.has(name.toLowerCase())) depth += 1;
    }
    if (depth <= 1) wordsFrom = index + tag.length;
  }
  const [first] = starts;
  if (first === undefined || depth !== 0) return undefined;
  return {
    open: html.slice(0, first),
    children: starts.map((start, at) => html.slice(start, starts[at + 1] ?? last)),
    close: html.slice(last),
  };
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

function unescaped(text: string): string {
  const signs: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"' };
  return text
    .replace(/&#x([\da-f]+);/gi, (_, digits: string) => String.fromCodePoint(Number.parseInt(digits, 16)))
    .replace(/&(lt|gt|amp|quot);/g, (_, name: string) => signs[name]!);
}
