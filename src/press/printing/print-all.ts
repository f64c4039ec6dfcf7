import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Sheet } from '../paper/paper.ts';
import { findBrowser, NoBrowserError } from './find-browser.ts';
import { inTurns } from './in-turns.ts';
import { LostBrowserError, lastingPrinter } from './lasting-printer.ts';
import type { PageHtml, TrialPrint } from './order.ts';
import { openPrinter, type PrintOptions, UnprintableError } from './print-pdf.ts';
import { removeStale } from './stale-files.ts';
import { secondsLeft } from './time-left.ts';
import { UnwrittenError, type WholeFile, writeTogether } from './write-whole.ts';

/** A page to print to `path.html` and `path.pdf` under the output folder. */
export interface PageToPrint {
  readonly path: string;
  readonly paper: Sheet;
  /** The date that the PDF bears. */
  readonly date: Date;
  /** A self-contained document, or what makes it when its turn comes; undefined where it says why there is none. */
  readonly html: string | ((trial: TrialPrint) => Promise<PageHtml | undefined>);
  /** One more file, that takes its place after the page's own two. */
  readonly alongside?: (printed: { readonly html: string; readonly pdf: Uint8Array }) => WholeFile;
}

export interface PrintAllOptions {
  readonly out: string;
  /** As of `--browser`; left out, one is found. None is looked for before a page is to be printed. */
  readonly browser?: string | undefined;
  /** How many are printed at once, each on a page of its own in the one browser. 1 where left out. */
  readonly jobs?: number | undefined;
  /** Once aborted, no other page is begun, and those begun are dropped: both files of a page are new, or neither. */
  readonly signal?: AbortSignal | undefined;
  /** Is told what happens, as it happens. */
  readonly tell?: ((event: PrintEvent) => void) | undefined;
}

export type PrintEvent =
  | {
      readonly kind: 'begun';
      readonly path: string;
      /** Counted from 1, of `of`. */
      readonly number: number;
      readonly of: number;
      /** Undefined while it is not known. */
      readonly secondsLeft: number | undefined;
    }
  | { readonly kind: 'printed'; readonly path: string }
  /** The page itself is at fault, or ends every browser; its earlier files stand. */
  | { readonly kind: 'unprintable'; readonly path: string; readonly messages: readonly string[] }
  /** Without a browser: the HTML alone. `oldPdf`: one of an earlier build lies beside it. */
  | { readonly kind: 'html-only'; readonly path: string; readonly oldPdf: boolean }
  | { readonly kind: 'unwritten'; readonly path: string; readonly message: string };

export interface PrintedAll {
  readonly printed: number;
  readonly unprintable: number;
  readonly unwritten: number;
  /** Not begun or dropped, because of the signal, or because nothing can be written. */
  readonly left: number;
  /** Why there is no browser, where one was needed. */
  readonly noBrowser: string | undefined;
}

/**
 * Prints pages, and writes HTML and PDF of each together: a page that cannot be printed or written leaves its earlier
 * files, and does not stop the others. A browser that ends is started again.
 */
export async function printAll(pages: readonly PageToPrint[], options: PrintAllOptions): Promise<PrintedAll> {
  const { out, browser, jobs = 1, signal, tell = () => undefined } = options;
  const counts = { printed: 0, unprintable: 0, unwritten: 0, htmlOnly: 0, none: 0 };
  let noBrowser: NoBrowserError | undefined;
  await removeStale(pages.map(({ path }) => dirname(join(out, path))));
  const printer = lastingPrinter(async () => openPrinter(await findBrowser({ named: browser })));
  const full = new AbortController();
  const stop = () => void printer.close();
  signal?.addEventListener('abort', stop, { once: true });
  const started = performance.now();
  const done = () => Object.values(counts).reduce((sum, count) => sum + count, 0);

  const printed = async (html: string, how: PrintOptions): Promise<Uint8Array | undefined> => {
    if (noBrowser) return undefined;
    try {
      return await printer.print(html, how);
    } catch (error) {
      if (!(error instanceof NoBrowserError)) throw error;
      noBrowser = error;
      return undefined;
    }
  };
  const printOne = async (page: PageToPrint, index: number): Promise<void> => {
    const { path, paper, date } = page;
    const seconds = (performance.now() - started) / 1000;
    tell({
      kind: 'begun',
      path,
      number: index + 1,
      of: pages.length,
      secondsLeft: secondsLeft(done(), pages.length, seconds),
    });
    const trial: TrialPrint = (html, how) => printed(html, { ...how, paper, date });
    const to = join(out, path);
    try {
      const made: PageHtml | undefined =
        typeof page.html === 'string' ? { html: page.html } : await page.html(trial);
      if (made === undefined) {
        counts.none += 1;
        return;
      }
      const html = made.screen?.() ?? made.html;
      const pdf = made.pdf ?? (await printed(made.html, { paper, date }));
      if (signal?.aborted) return;
      if (pdf === undefined) {
        await writeTogether([{ path: `${to}.html`, content: html }]);
        counts.htmlOnly += 1;
        tell({ kind: 'html-only', path, oldPdf: existsSync(`${to}.pdf`) });
        return;
      }
      // The PDF first: it is the one that another program may hold open.
      await writeTogether([
        { path: `${to}.pdf`, content: pdf },
        { path: `${to}.html`, content: html },
        ...(page.alongside ? [page.alongside({ html, pdf })] : []),
      ]);
      counts.printed += 1;
      tell({ kind: 'printed', path });
    } catch (error) {
      if (error instanceof UnwrittenError) {
        counts.unwritten += 1;
        tell({ kind: 'unwritten', path, message: error.message });
        if (error.stopsAll) full.abort();
      } else if (signal?.aborted) {
        // The browser was ended under it.
      } else if (error instanceof UnprintableError || error instanceof LostBrowserError) {
        counts.unprintable += 1;
        const messages = error instanceof UnprintableError ? error.messages : [error.message];
        tell({ kind: 'unprintable', path, messages });
      } else throw error;
    }
  };
  try {
    const either = AbortSignal.any([full.signal, ...(signal ? [signal] : [])]);
    await inTurns(pages, jobs, printOne, either);
  } finally {
    signal?.removeEventListener('abort', stop);
    await printer.close();
  }
  const { unprintable, unwritten } = counts;
  const left = pages.length - done();
  return { printed: counts.printed, unprintable, unwritten, left, noBrowser: noBrowser?.message };
}
