import type { Element, Nodes, RootContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import type { Page } from './page-document.ts';

/** The self-contained HTML of a page, in the pieces around its style and its body. */
export interface HtmlPieces {
  readonly start: string;
  /** Between the style and the body. */
  readonly middle: string;
  readonly end: string;
}

/** A self-contained HTML document. */
export function documentHtml(page: Page): string {
  const { start, middle, end } = htmlPieces(page);
  return `${start}${page.css}${middle}${htmlOf(page.body)}${end}`;
}

/** Nodes as HTML. Every value is in double quotes, where a single quote is only itself. */
export function htmlOf(nodes: Nodes | readonly RootContent[]): string {
  return toHtml(nodes as Nodes | RootContent[], { allowDangerousCharacters: true });
}

export function htmlPieces({ title, head = [] }: Page): HtmlPieces {
  const html = tagsOf(h('html', { lang: 'en' }));
  const style = tagsOf(h('style'));
  const headed = tagsOf(h('head'));
  const before = htmlOf([
    h('meta', { charSet: 'utf-8' }),
    h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    ...head,
    h('title', title),
  ]);
  return {
    start: `<!doctype html>\n${html.open}${headed.open}${before}${style.open}`,
    middle: style.close + headed.close,
    end: `${html.close}\n`,
  };
}

/** The tags of an element; not for elements that are never closed. */
export function tagsOf(element: Element): { readonly open: string; readonly close: string } {
  const empty = htmlOf({ ...element, children: [] });
  const close = `</${element.tagName}>`;
  return { open: empty.slice(0, -close.length), close };
}
