import type { PagesOf } from './page-number.ts';

/** A page of a PDF, by its object. */
interface PageRef {
  readonly num: number;
  readonly gen: number;
}

/** Reads from a printed PDF the page of each place that a link of the document leads to, by its id. */
export async function findPages(pdf: Uint8Array): Promise<PagesOf> {
  // Only a book needs to read a PDF.
  const { getDocumentProxy } = await import('unpdf');
  const document = await getDocumentProxy(new Uint8Array(pdf), { verbosity: 0 });
  try {
    const places = Object.entries(await document.getDestinations()).map(([id, place]) => {
      const [page] = place as [PageRef];
      return { id, page, key: `${page.num} ${page.gen}` };
    });
    const refs = new Map(places.map(({ key, page }) => [key, page]));
    const numbers = new Map(
      await Promise.all(
        [...refs].map(async ([key, page]) => [key, (await document.getPageIndex(page)) + 1] as const),
      ),
    );
    return new Map(places.map(({ id, key }) => [id, numbers.get(key)!]));
  } finally {
    await document.loadingTask.destroy();
  }
}
