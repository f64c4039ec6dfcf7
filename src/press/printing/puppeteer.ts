import type { PuppeteerNode } from 'puppeteer-core';

type Puppeteer = Pick<PuppeteerNode, 'launch' | 'executablePath'>;

/**
 * puppeteer, which knows the browser that it brought along; where npm has left it out (it is optional, for the fetching
 * of a browser may fail) its core, which prints as well and knows none.
 */
export async function loadPuppeteer(whole = wholePuppeteer): Promise<Puppeteer> {
  return whole().catch(() => import('puppeteer-core'));
}

/** Its name is a text to the compiler, so that a clone compiles without it too; its types are those of the core. */
function wholePuppeteer(): Promise<Puppeteer> {
  return import('puppeteer' as string);
}
