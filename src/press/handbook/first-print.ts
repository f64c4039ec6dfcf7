import { findBrowser } from '../find-browser.ts';
import type { Paper } from '../paper.ts';
import { openPrinter } from '../print-pdf.ts';
import { lastingPrinter } from '../printing/lasting-printer.ts';
import { findPages } from './find-pages.ts';
import type { PagesOf } from './page-number.ts';

export interface Unpaged {
  readonly html: (pages?: PagesOf) => string;
  readonly paper: Paper;
  readonly date: Date;
}

/**
 * Prints a book once to learn on which page everything stands, and gives it with its page numbers, to be printed again.
 * Throws NoBrowserError where there is no browser, UnprintableError where a page cannot be printed.
 */
export async function withPages(books: readonly Unpaged[], browser: string | undefined): Promise<string[]> {
  const printer = lastingPrinter(async () => openPrinter(await findBrowser({ named: browser })));
  try {
    const paged: string[] = [];
    for (const { html, paper, date } of books)
      paged.push(html(await findPages(await printer.print(html(), { paper, date, draft: true }))));
    return paged;
  } finally {
    await printer.close();
  }
}
