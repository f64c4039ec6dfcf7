import { basename } from 'node:path';
import type { Browser, BrowserContext, LaunchOptions, Page } from 'puppeteer-core';
import { faultMessage, findPageFaults, type PageFault } from '../packet/page-faults.ts';
import { contentHeight, contentWidth, type Sheet } from '../paper/paper.ts';
import { type FoundBrowser, NoBrowserError } from './find-browser.ts';
import { outlineTitles } from './outline-titles.ts';
import { loadPuppeteer } from './puppeteer.ts';
import { repeatablePdf } from './repeatable-pdf.ts';

/** One running browser. Prints that run at the same time have a page each. */
export interface Printer {
  /**
   * Prints a self-contained HTML document to a tagged PDF with bookmarks; the same HTML and date give the same bytes.
   * Page sizes and margins are those of the document's own style; `paper` is the sheet that its text was set for.
   * Throws `UnprintableError` where something is wider than the page or asks for something outside the document.
   */
  readonly print: (html: string, how: PrintOptions) => Promise<Uint8Array>;
  /** Whether the browser is still running. */
  readonly isOpen: () => boolean;
  /** Ends the browser, and what it is printing. */
  readonly close: () => Promise<void>;
}

export interface PrintOptions {
  readonly paper: Sheet;
  /** The date of the inputs; written into the PDF as its date. */
  readonly date: Date;
  /** The same pages, without tags and bookmarks: enough to see on which page each place is. */
  readonly draft?: boolean;
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
/** ms. To the browser a whole handbook is one page. */
const longestPrint = 600_000;
/** ms. A program that is not a browser ends at once; a busy machine takes long. */
const longestStart = 300_000;
/** ms that a browser has to end by itself. */
const longestClose = 5_000;

/** The same for every user: dates, numbers and hyphens on a page do not depend on the machine. */
const fixedEnvironment = { TZ: 'UTC', LANG: 'en_US.UTF-8', LC_ALL: 'en_US.UTF-8', LANGUAGE: 'en_US' };

/** Starts the browser. Throws `NoBrowserError` where it does not start. */
export async function openPrinter(found: FoundBrowser): Promise<Printer> {
  // Loading puppeteer takes longer than most commands do: it is loaded only to print.
  const puppeteer = await loadPuppeteer();
  let browser: Browser;
  try {
    browser = await puppeteer.launch(launchOptions(found));
  } catch (error) {
    throw new NoBrowserError(`${found.path} does not start as a browser; name another with --browser PATH.`, {
      cause: error,
    });
  }
  return { ...printerIn(browser.defaultBrowserContext()), close: () => closeBrowser(browser) };
}

/** How a browser is started so that it prints the same on every machine. */
export function launchOptions(found: FoundBrowser): LaunchOptions {
  const shell = found.origin === 'shipped' || basename(found.path).includes('headless-shell');
  return {
    executablePath: found.path,
    headless: shell ? 'shell' : true,
    pipe: true,
    env: { ...process.env, ...fixedEnvironment, ...found.environment },
    args: ['--no-sandbox', '--no-zygote', '--disable-gpu', '--font-render-hinting=none'],
    timeout: longestStart,
    protocolTimeout: longestPrint,
    // Whoever prints stops it: puppeteer would end this process before it has tidied up.
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  };
}

/** Prints in a browser that is already running; closing the printer leaves it running. */
export function printerIn(context: BrowserContext): Printer {
  const free: OpenPage[] = [];
  return {
    print: async (html, how) => {
      const page = free.pop() ?? (await openPage(context));
      try {
        const pdf = await printUnbroken(page, html, how);
        free.push(page);
        return pdf;
      } catch (error) {
        if (error instanceof UnprintableError) free.push(page);
        else void page.page.close().catch(() => undefined);
        throw error;
      }
    },
    isOpen: () => context.browser().connected,
    close: () => context.close(),
  };
}

async function closeBrowser(browser: Browser): Promise<void> {
  const late = setTimeout(() => browser.process()?.kill('SIGKILL'), longestClose);
  try {
    await browser.close();
  } finally {
    clearTimeout(late);
  }
}

interface OpenPage {
  readonly page: Page;
  /** What the document asked for outside itself, since this list was last emptied. */
  readonly refused: string[];
}

/** A page on which nothing runs, and from which nothing is fetched or sent. */
async function openPage(context: BrowserContext): Promise<OpenPage> {
  const page = await context.newPage();
  const refused: string[] = [];
  page.setDefaultTimeout(longestPrint);
  await page.setJavaScriptEnabled(false);
  await page.emulateMediaType('print');
  await page.setRequestInterception(true);
  page.on('request', (request) => {
    if (/^(data|about):/.test(request.url())) return void request.continue().catch(() => undefined);
    refused.push(request.url());
    void request.abort().catch(() => undefined);
  });
  return { page, refused };
}

/** A page that breaks down no longer answers: whatever was asked of it would wait for ever. */
async function printUnbroken(open: OpenPage, html: string, how: PrintOptions): Promise<Uint8Array> {
  let onBroken: (error: Error) => void = () => undefined;
  const broken = new Promise<never>((_, reject) => {
    onBroken = reject;
  });
  open.page.once('error', onBroken);
  try {
    return await Promise.race([printPage(open, html, how), broken]);
  } finally {
    open.page.off('error', onBroken);
  }
}

async function printPage(
  { page, refused }: OpenPage,
  html: string,
  { paper, date, draft = false }: PrintOptions,
): Promise<Uint8Array> {
  refused.length = 0;
  const room = { width: contentWidth(paper) * pixelsPerMm, height: contentHeight(paper) * pixelsPerMm };
  await page.setViewport({ width: Math.ceil(room.width), height: Math.ceil(room.height) });
  await page.setContent(html, { waitUntil: 'load' });
  // Fonts begin to load when text is first laid out, and seem ready before that: on a busy machine a page would be measured
  // in another typeface. So each is asked for.
  await page.evaluate(async () => {
    await Promise.allSettled([...document.fonts].map((face) => face.load()));
    await document.fonts.ready;
    document.documentElement.getBoundingClientRect();
  });
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
  const pdf = await page.pdf({
    preferCSSPageSize: true,
    printBackground: true,
    tagged: !draft,
    outline: !draft,
    timeout: longestPrint,
  });
  if (draft) return pdf;
  const headings = (await page.evaluate(
    `[...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map((heading) => heading.innerText)`,
  )) as string[];
  return repeatablePdf(outlineTitles(pdf, headings), date);
}
