import type { PagesOf } from './page-number.ts';

/** Reads from a printed PDF on which page each place stands that a link of the document leads to, by its id. */
export async function findPages(pdf: Uint8Array): Promise<PagesOf> {
  // Only a book needs to read a PDF.
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const task = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
  try {
    const document = await task.promise;
    const places = await document.getDestinations();
    const pages = new Map<string, number>();
    const numbers = new Map<string, number>();
    for (const [id, place] of Object.entries(places)) {
      const [page] = place as [{ num: number; gen: number }];
      const key = `${page.num} ${page.gen}`;
      const number = numbers.get(key) ?? (await document.getPageIndex(page)) + 1;
      numbers.set(key, number);
      pages.set(id, number);
    }
    return pages;
  } finally {
    await task.destroy();
  }
}
