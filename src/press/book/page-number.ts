import type { Element } from 'hast';
import { h } from 'hastscript';

/** The page of each id that the book links to. */
export type PagesOf = ReadonlyMap<string, number>;

/** As wide as the number of any page of a book, until the pages are known. */
export const unknown = '000';

/** The number of the page with `id` on it, as a link to it; until the pages are known, a mark of the same width. */
export function pageNumber(id: string, pages: PagesOf | undefined): Element {
  return h('a', { class: 'page-number', href: `#${id}` }, pages ? String(pageOf(id, pages)) : unknown);
}

/** Throws where the printed book has no place with this id: a wrong page number is never printed. */
function pageOf(id: string, pages: PagesOf): number {
  const page = pages.get(id);
  if (page === undefined) throw new Error(`The printed book has no place named ${id}.`);
  return page;
}

/** Pages in order, each once, as links; consecutive pages as one range: `12, 43–45`. */
export function pageRanges(ids: readonly string[], pages: PagesOf | undefined): (Element | string)[] {
  if (!pages) return ids.flatMap((id, at) => [...(at === 0 ? [] : [', ']), pageNumber(id, pages)]);
  const placed = ids.map((id) => ({ id, page: pageOf(id, pages) })).sort((a, b) => a.page - b.page);
  const ranges: { id: string; from: number; to: number }[] = [];
  for (const { id, page } of placed) {
    const last = ranges.at(-1);
    if (last && page - last.to <= 1) last.to = page;
    else ranges.push({ id, from: page, to: page });
  }
  return ranges.flatMap(({ id, from, to }, at) => [
    ...(at === 0 ? [] : [', ']),
    h('a', { class: 'page-number', href: `#${id}` }, from === to ? `${from}` : `${from}–${to}`),
  ]);
}
