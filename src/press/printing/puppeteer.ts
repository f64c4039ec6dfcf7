import type { PuppeteerNode } from 'puppeteer-core';

type Puppeteer = Pick<PuppeteerNode, 'launch' | 'executablePath'>;

/**
 * puppeteer, which knows the browser that it fetched; where npm has left it out (it is optional, because fetching a
 * browser may fail) its core, which prints just as well and knows no browser.
 */
export async function loadPuppeteer(whole = wholePuppeteer): Promise<Puppeteer> {
  return whole().catch(() => import('puppeteer-core'));
}

/** To the compiler its name is only a text, so that a clone compiles without it too; its types are those of the core. */
function wholePuppeteer(): Promise<Puppeteer> {
  return import('puppeteer' as string);
}
