import { basename } from 'node:path';
import puppeteer, { type Page } from 'puppeteer-core';
import { findBrowser } from '../src/press/printing/find-browser.ts';

/** A browser's page on which a test looks at finished HTML, as a reader on a screen does. */
export interface Screen {
  /** Shows a document in a window so many CSS pixels wide; the page is the same one every time. */
  readonly show: (html: string, width: number) => Promise<Page>;
  readonly close: () => Promise<void>;
}

export async function openScreen(): Promise<Screen> {
  const found = await findBrowser();
  const shell = found.origin === 'shipped' || basename(found.path).includes('headless-shell');
  const browser = await puppeteer.launch({
    executablePath: found.path,
    headless: shell ? 'shell' : true,
    pipe: true,
    env: { ...process.env, ...found.environment },
    args: ['--no-sandbox', '--no-zygote', '--disable-gpu'],
  });
  const page = await browser.newPage();
  return {
    show: async (html, width) => {
      await page.setViewport({ width, height: 900 });
      await page.setContent(html, { waitUntil: 'load' });
      return page;
    },
    close: () => browser.close(),
  };
}
