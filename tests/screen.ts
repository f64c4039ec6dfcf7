import puppeteer, { type BrowserContext, type Page } from 'puppeteer-core';
import { inject } from 'vitest';
import { type Printer, printerIn } from '../src/press/printing/print-pdf.ts';

/** What closes a part of the browser that all tests share. */
interface Part {
  readonly close: () => Promise<void>;
}

/** A browser page on which a test looks at finished HTML, as a reader on a screen does. */
export interface Screen extends Part {
  /** Shows a document in a window this many CSS pixels wide; the page is the same one every time. */
  readonly show: (html: string, width: number) => Promise<Page>;
}

/** A test's own pages and cookies, in the browser that all tests share. Nothing there gives up after a time. */
export async function openWindow(): Promise<Part & { readonly context: BrowserContext }> {
  const browser = await puppeteer.connect({ browserWSEndpoint: inject('browser'), protocolTimeout: 0 });
  const context = await browser.createBrowserContext();
  return {
    context,
    close: async () => {
      await context.close();
      await browser.disconnect();
    },
  };
}

export async function openPage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(0);
  return page;
}

export async function openScreen(): Promise<Screen> {
  const { context, close } = await openWindow();
  const page = await openPage(context);
  return {
    show: async (html, width) => {
      await page.setViewport({ width, height: 900 });
      await page.setContent(html, { waitUntil: 'load' });
      return page;
    },
    close,
  };
}

/** Prints as the press does, in the browser that all tests share. */
export async function openSharedPrinter(): Promise<Printer> {
  const { context, close } = await openWindow();
  return { ...printerIn(context), close };
}
