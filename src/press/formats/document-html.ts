import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';

/** A self-contained HTML document: its body with all of its style inside. */
export function documentHtml(title: string, css: string, body: Element): string {
  const page = h('html', { lang: 'en' }, [
    h('head', [
      h('meta', { charSet: 'utf-8' }),
      h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      h('title', title),
      h('style', css),
    ]),
    body,
  ]);
  // Drawings come as finished SVG text from our own components; the author's own HTML was dropped before.
  return `<!doctype html>\n${toHtml(page, { allowDangerousHtml: true })}\n`;
}
