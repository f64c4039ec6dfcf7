import { accessSync, constants, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { fontconfigPath } from '../paper/fonts.ts';
import { puppeteerBrowser } from './puppeteer-browser.ts';
import { shippedBrowser } from './shipped-browser.ts';

/** A browser to print with, and what its process, and only its process, needs in its environment. */
export interface FoundBrowser {
  readonly path: string;
  readonly origin: 'named' | 'shipped' | 'puppeteer' | 'installed';
  readonly environment: Readonly<Record<string, string>>;
}

export interface BrowserSearch {
  /** A path that the user names (`--browser`); overrides CHALKWING_BROWSER. */
  readonly named?: string | undefined;
  /** Default: the process's environment. */
  readonly environment?: Readonly<Record<string, string | undefined>> | undefined;
  /** Where each kind of browser is looked for; the defaults look on this machine. */
  readonly sources?: Partial<BrowserSources> | undefined;
}

interface BrowserSources {
  readonly shipped: (cacheFolder: string) => ReturnType<typeof shippedBrowser>;
  readonly puppeteer: () => Promise<string | undefined>;
  readonly installed: (environment: Readonly<Record<string, string | undefined>>) => string | undefined;
}

/** No browser: a PDF cannot be printed. The message says how to get one; HTML and text need none. */
export class NoBrowserError extends Error {
  override readonly name = 'NoBrowserError';
}

/**
 * Finds the browser that prints: the one the user names; the one that the optional npm package ships; the one in
 * puppeteer's cache; an installed Chrome, Chromium or Edge. Throws `NoBrowserError` where there is none, or where the
 * named one is not there: whoever names a browser does not want another.
 */
export async function findBrowser(search: BrowserSearch = {}): Promise<FoundBrowser> {
  const environment = search.environment ?? process.env;
  const sources = { ...machineSources, ...search.sources };
  const fonts: Record<string, string> =
    process.platform === 'linux' ? { FONTCONFIG_FILE: fontconfigPath } : {};

  const named = search.named ?? (environment.CHALKWING_BROWSER || undefined);
  if (named !== undefined) {
    if (isProgram(named)) return { path: named, origin: 'named', environment: fonts };
    const from = search.named === undefined ? 'CHALKWING_BROWSER' : '--browser';
    throw new NoBrowserError(
      `${from} names no program that can be run: ${named}. Give the path of a Chrome, Chromium or Edge program, or leave it out.`,
    );
  }

  let trouble = '';
  try {
    const shipped = await sources.shipped(cacheFolder(environment));
    if (shipped !== undefined) {
      const libraries: Record<string, string> =
        shipped.libraries === undefined ? {} : { LD_LIBRARY_PATH: shipped.libraries };
      return { path: shipped.path, origin: 'shipped', environment: { ...fonts, ...libraries } };
    }
  } catch (error) {
    trouble = ` (The browser that comes with Chalkwing can not be used: ${(error as Error).message}.)`;
  }

  const own = await sources.puppeteer();
  if (own !== undefined) return { path: own, origin: 'puppeteer', environment: fonts };
  const installed = sources.installed(environment);
  if (installed !== undefined) return { path: installed, origin: 'installed', environment: fonts };
  throw new NoBrowserError(
    'No browser to print the PDF with. Get one in any of these ways: install Chrome, Chromium or Edge; ' +
      'run `npm install --include=optional` (Linux) for the one that comes with Chalkwing; ' +
      'run `npx puppeteer browsers install chrome-headless-shell`; ' +
      `or name one with --browser PATH or the variable CHALKWING_BROWSER. HTML and plain text need no browser.${trouble}`,
  );
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** The folder for what can be made again, in the user's own cache folder. */
export function cacheFolder(environment: Readonly<Record<string, string | undefined>> = process.env): string {
  if (environment.XDG_CACHE_HOME) return join(environment.XDG_CACHE_HOME, 'chalkwing');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'chalkwing');
  if (process.platform === 'win32' && environment.LOCALAPPDATA) {
    return join(environment.LOCALAPPDATA, 'chalkwing', 'cache');
  }
  return join(homedir(), '.cache', 'chalkwing');
}

const machineSources: BrowserSources = {
  shipped: shippedBrowser,
  puppeteer: puppeteerBrowser,
  installed: installedBrowser,
};

const programNames = [
  'google-chrome-stable',
  'google-chrome',
  'chromium',
  'chromium-browser',
  'microsoft-edge-stable',
  'microsoft-edge',
];

const macPrograms = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const windowsPrograms = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** An installed browser: on the path, or where its installer puts it. */
export function installedBrowser(
  environment: Readonly<Record<string, string | undefined>>,
): string | undefined {
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const onPath = programNames.flatMap((name) => folders.map((folder) => join(folder, name)));
  const windowsFolders = [
    environment.PROGRAMFILES,
    environment['PROGRAMFILES(X86)'],
    environment.LOCALAPPDATA,
  ];
  const onWindows = windowsPrograms.flatMap((program) =>
    windowsFolders.flatMap((folder) => (folder ? [join(folder, program)] : [])),
  );
  const places =
    process.platform === 'win32'
      ? onWindows
      : process.platform === 'darwin'
        ? [...macPrograms, ...onPath]
        : onPath;
  return places.find(isProgram);
}
