import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { loadPuppeteer } from './puppeteer.ts';

type Puppeteer = Pick<Awaited<ReturnType<typeof loadPuppeteer>>, 'executablePath'>;

/**
 * The path of puppeteer's own browser: the one that this version is made for, else any in its cache; the headless
 * shell before the whole Chrome, because it prints the same and starts sooner.
 */
export async function puppeteerBrowser(
  load: () => Promise<Puppeteer> = loadPuppeteer,
  cacheDir = process.env.PUPPETEER_CACHE_DIR ?? join(homedir(), '.cache', 'puppeteer'),
): Promise<string | undefined> {
  const puppeteer = await load();
  const paths = [ownPath(puppeteer, 'shell'), ownPath(puppeteer, true), ...(await cached(cacheDir))];
  return paths.find((path) => path !== undefined && existsSync(path));
}

/** Undefined for the core alone, which knows no browser. */
function ownPath(puppeteer: Puppeteer, headless: 'shell' | true): string | undefined {
  try {
    return puppeteer.executablePath({ headless });
  } catch {
    return undefined;
  }
}

async function cached(cacheDir: string): Promise<string[]> {
  const { getInstalledBrowsers } = await import('@puppeteer/browsers');
  const installed = await getInstalledBrowsers({ cacheDir }).catch(() => []);
  return ['chrome-headless-shell', 'chrome'].flatMap((name) =>
    installed
      .filter(({ browser }) => browser === name)
      .map(({ executablePath }) => executablePath)
      .reverse(),
  );
}
