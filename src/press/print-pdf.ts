import { basename } from 'node:path';
import type { Browser, Page } from 'puppeteer-core';
import { type FoundBrowser, NoBrowserError } from './find-browser.ts';
import { faultMessage, findPageFaults, type PageFault } from './page-faults.ts';
import { contentHeight, contentWidth, type Paper } from './paper.ts';
import { repeatablePdf } from './repeatable-pdf.ts';

/** One running browser that prints one page after the other. */
export interface Printer {
  /**
   * Prints a self-contained HTML document to a tagged PDF with bookmarks; the same HTML and date give the same bytes.
   * Page sizes and margins are those of the document's own style; `paper` is what its text was set for.
   * Throws `UnprintableError` where something is wider than the page or asks for something outside the document.
   */
  readonly print: (html: string, how: PrintOptions) => Promise<Uint8Array>;
  /** Ends the browser. */
  readonly close: () => Promise<void>;
}

export interface PrintOptions {
  readonly paper: Paper;
  /** The date of the inputs; stands in the PDF as its date. */
  readonly date: Date;
}

/** The page was not printed; each message says what is wrong and what to change. */
export class UnprintableError extends Error {
  override readonly name = 'UnprintableError';
  readonly messages: readonly string[];
  constructor(messages: readonly string[]) {
    super(messages.join('\n'));
    this.messages = messages;
  }
}

/** Opens a printer, hands it on, and closes it whatever happens. */
export async function withPrinter<Result>(
  browser: FoundBrowser,
  use: (printer: Printer) => Promise<Result>,
): Promise<Result> {
  const printer = await openPrinter(browser);
  try {
    return await use(printer);
  } finally {
    await printer.close();
  }
}

const pixelsPerMm = 96 / 25.4;

/** Starts the browser. Throws `NoBrowserError` where it does not start. */
export async function openPrinter(found: FoundBrowser): Promise<Printer> {
  // Loading puppeteer takes longer than most commands need: only who prints loads it.
  const { default: puppeteer } = await import('puppeteer-core');
  const shell = found.origin === 'shipped' || basename(found.path).includes('headless-shell');
  let browser: Browser;
  try {
    browser = await puppeteer.launch({
      executablePath: found.path,
      headless: shell ? 'shell' : true,
      pipe: true,
      env: { ...process.env, ...found.environment },
      args: ['--no-sandbox', '--no-zygote', '--disable-gpu', '--font-render-hinting=none'],
    });
  } catch (error) {
    throw new NoBrowserError(`${found.path} does not start as a browser; name another with --browser PATH.`, {
      cause: error,
    });
  }
  const refused: string[] = [];
  let queue: Promise<unknown> = Promise.resolve();
  try {
    const page = await browser.newPage();
    await page.setJavaScriptEnabled(false);
    await page.emulateMediaType('print');
    await page.setRequestInterception(true);
    page.on('request', (request) => {
      if (/^(data|about):/.test(request.url())) return void request.continue();
      refused.push(request.url());
      void request.abort();
    });
    return {
      print: (html, how) => {
        // The page is shared, so prints wait for each other; one that fails does not stop the next.
        const printed = queue.then(() => printPage(page, html, how, refused));
        queue = printed.catch(() => undefined);
        return printed;
      },
      close: () => browser.close(),
    };
  } catch (error) {
    await browser.close();
    throw error;
  }
}

async function printPage(
  page: Page,
  html: string,
  { paper, date }: PrintOptions,
  refused: string[],
): Promise<Uint8Array> {
  refused.length = 0;
  const room = { width: contentWidth(paper) * pixelsPerMm, height: contentHeight(paper) * pixelsPerMm };
  await page.setViewport({ width: Math.ceil(room.width), height: Math.ceil(room.height) });
  await page.setContent(html, { waitUntil: 'load' });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  // Sent as text: a TypeScript loader may have put calls of its own `__name` helper into the function.
  const check = `{const __name = (named) => named; (${findPageFaults})(${JSON.stringify(room)})}`;
  const faults = (await page.evaluate(check)) as PageFault[];
  const messages = [
    ...faults.map(faultMessage),
    ...refused.map(
      (url) => `The page asks for ${url}, which lies outside it: put the picture into the lesson's folder.`,
    ),
  ];
  if (messages.length > 0) throw new UnprintableError(messages);
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
  return repeatablePdf(pdf, date);
}
