import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Browser, computeExecutablePath } from '@puppeteer/browsers';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadPuppeteer } from './puppeteer.ts';
import { puppeteerBrowser } from './puppeteer-browser.ts';

let cacheDir = '';
beforeEach(async () => {
  cacheDir = await mkdtemp(join(tmpdir(), 'puppeteer-cache-'));
});
afterEach(() => rm(cacheDir, { recursive: true }));

/** A browser as puppeteer's install script leaves it. */
async function fetched(browser: Browser, buildId: string): Promise<string> {
  const path = computeExecutablePath({ browser, buildId, cacheDir });
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, '');
  return path;
}

const withoutOptional = () => loadPuppeteer(() => Promise.reject(new Error('there is no such package')));
const knowing = (shell: string, chrome: string) => async () => ({
  executablePath: (options?: unknown) =>
    (options as { headless: unknown }).headless === 'shell' ? shell : chrome,
});

describe('puppeteer’s own browser', () => {
  it('is the one that puppeteer is made for, the shell before the whole one, before any other', async () => {
    const other = await fetched(Browser.CHROMEHEADLESSSHELL, '200.0.0.0');
    const shell = await fetched(Browser.CHROMEHEADLESSSHELL, '148.0.0.0');
    const chrome = await fetched(Browser.CHROME, '148.0.0.0');
    expect(await puppeteerBrowser(knowing(shell, chrome), cacheDir)).toBe(shell);
    expect(await puppeteerBrowser(knowing('/not/fetched', chrome), cacheDir)).toBe(chrome);
    expect(await puppeteerBrowser(knowing('/not/fetched', '/nor/this'), cacheDir)).toBe(other);
  });

  it('is found where npm has left puppeteer out, and somebody fetched a browser', async () => {
    expect(await puppeteerBrowser(withoutOptional, cacheDir)).toBeUndefined();
    const chrome = await fetched(Browser.CHROME, '148.0.0.0');
    expect(await puppeteerBrowser(withoutOptional, cacheDir)).toBe(chrome);
    const shell = await fetched(Browser.CHROMEHEADLESSSHELL, '147.0.0.0');
    expect(await puppeteerBrowser(withoutOptional, cacheDir)).toBe(shell);
  });

  it('is none where the download left a folder and no program', async () => {
    await rm(await fetched(Browser.CHROME, '148.0.0.0'));
    expect(await puppeteerBrowser(withoutOptional, cacheDir)).toBeUndefined();
  });
});

it('puppeteer prints where it is there, and its core where it is not', async () => {
  const { launch, executablePath } = await import('puppeteer-core');
  const whole = { launch, executablePath };
  expect(await loadPuppeteer(async () => whole)).toBe(whole);
  expect((await withoutOptional()).launch).toBe(launch);
});
