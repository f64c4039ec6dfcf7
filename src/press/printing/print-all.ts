import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Format, Print } from '../formats/format.ts';
import { formats as allFormats } from '../formats/list.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { findBrowser, NoBrowserError } from './find-browser.ts';
import { inTurns } from './in-turns.ts';
import { LostBrowserError, lastingPrinter } from './lasting-printer.ts';
import type { WrittenFile } from './ledger.ts';
import { openPrinter, UnprintableError } from './print-pdf.ts';
import { removeStale } from './stale-files.ts';
import { secondsLeft } from './time-left.ts';
import { UnwrittenError, type WholeFile, writeTogether } from './write-whole.ts';

/** A page to write to `path` under the output folder, with the ending of each format. */
export interface PageToPrint {
  readonly path: string;
  /** The document, or what makes it when its turn comes; undefined where that says why there is none. */
  readonly document: PageDocument | ((print: Print) => Promise<PageDocument | undefined>);
  /** One more file, put in place after all of the page's own. */
  readonly alongside?: (written: readonly WrittenFile[]) => WholeFile;
}

export interface PrintAllOptions {
  readonly out: string;
  /** As `--browser` gives it; left out, one is found. None is looked for until a page is to be printed. */
  readonly browser?: string | undefined;
  /** How many are printed at once, each on a page of its own in the same browser. 1 where left out. */
  readonly jobs?: number | undefined;
  /** Once aborted, no other page is begun, and those begun are dropped: the files of a page are all new, or none is. */
  readonly signal?: AbortSignal | undefined;
  /** All of the list where left out. */
  readonly formats?: readonly Format[] | undefined;
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
  /** `endings`: those of the files that are written. */
  | { readonly kind: 'printed'; readonly path: string; readonly endings: readonly string[] }
  /** The page itself is at fault, or ends every browser; its earlier files stay. */
  | { readonly kind: 'unprintable'; readonly path: string; readonly messages: readonly string[] }
  /** Only what needs no browser is written. `old`: endings of files from an earlier build that lie beside it. */
  | {
      readonly kind: 'without-browser';
      readonly path: string;
      readonly endings: readonly string[];
      readonly old: readonly string[];
    }
  | { readonly kind: 'unwritten'; readonly path: string; readonly message: string };

export interface PrintedAll {
  readonly printed: number;
  readonly unprintable: number;
  readonly unwritten: number;
  /** Not begun, or dropped, because of the signal or because nothing can be written. */
  readonly left: number;
  /** Why there is no browser, where one was needed. */
  readonly noBrowser: string | undefined;
}

/**
 * Prints pages, and writes each in every format together: a page that cannot be printed or written keeps its earlier
 * files, and does not stop the others. A browser that ends is started again.
 */
export async function printAll(pages: readonly PageToPrint[], options: PrintAllOptions): Promise<PrintedAll> {
  const { out, browser, jobs = 1, signal, formats = allFormats, tell = () => undefined } = options;
  const counts = { printed: 0, unprintable: 0, unwritten: 0, withoutBrowser: 0, none: 0 };
  let noBrowser: NoBrowserError | undefined;
  await removeStale(pages.map(({ path }) => dirname(join(out, path))));
  const printer = lastingPrinter(async () => openPrinter(await findBrowser({ named: browser })));
  const full = new AbortController();
  const stop = () => void printer.close();
  signal?.addEventListener('abort', stop, { once: true });
  const started = performance.now();
  const done = () => Object.values(counts).reduce((sum, count) => sum + count, 0);

  const print: Print = async (document, how) => {
    if (noBrowser) return undefined;
    const { paper, date } = document;
    const { documentHtml } = await import('../formats/document-html.ts');
    try {
      return await printer.print(documentHtml(document), { ...how, paper, date });
    } catch (error) {
      if (!(error instanceof NoBrowserError)) throw error;
      noBrowser = error;
      return undefined;
    }
  };
  const printOne = async (page: PageToPrint, index: number): Promise<void> => {
    const { path } = page;
    const seconds = (performance.now() - started) / 1000;
    tell({
      kind: 'begun',
      path,
      number: index + 1,
      of: pages.length,
      secondsLeft: secondsLeft(done(), pages.length, seconds),
    });
    const printOnce = printsOnce(print);
    const to = join(out, path);
    try {
      const document = typeof page.document === 'function' ? await page.document(printOnce) : page.document;
      if (document === undefined) {
        counts.none += 1;
        return;
      }
      const written: WrittenFile[] = [];
      const missing: string[] = [];
      for (const { ending, write } of formats) {
        const content = await write(document, { print: printOnce });
        if (content === undefined) missing.push(ending);
        else written.push({ ending, content });
      }
      if (signal?.aborted) return;
      const isWhole = missing.length === 0;
      await writeTogether([
        ...written.map(({ ending, content }) => ({ path: `${to}.${ending}`, content })),
        ...(isWhole && page.alongside ? [page.alongside(written)] : []),
      ]);
      const endings = written.map(({ ending }) => ending);
      if (isWhole) {
        counts.printed += 1;
        tell({ kind: 'printed', path, endings });
      } else {
        counts.withoutBrowser += 1;
        const old = missing.filter((ending) => existsSync(`${to}.${ending}`));
        tell({ kind: 'without-browser', path, endings, old });
      }
    } catch (error) {
      if (error instanceof UnwrittenError) {
        counts.unwritten += 1;
        tell({ kind: 'unwritten', path, message: error.message });
        if (error.stopsAll) full.abort();
      } else if (signal?.aborted) {
        // The browser was ended while it printed.
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

/** What is tried out on the way is not printed again when it turns out good. */
function printsOnce(print: Print): Print {
  const known = new Map<PageDocument, Promise<Uint8Array | undefined>>();
  return (document, how) => {
    if (how?.draft) return print(document, how);
    const printing = known.get(document) ?? print(document);
    known.set(document, printing);
    return printing;
  };
}
