import { readFileSync, realpathSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { findBrowser } from './find-browser.ts';

const here = createRequire(import.meta.url);

/**
 * Which browser would print, found out without starting it: the version of the one that comes with the packages, else
 * the size and date of the program. Undefined where none is found: then nothing can be printed anew anyway.
 */
export async function browserMark(named: string | undefined): Promise<string | undefined> {
  try {
    const { path, origin } = await findBrowser({ named, sources: { shipped: shippedUnopened } });
    if (origin === 'shipped') return path;
    const { size, mtimeMs } = statSync(realpathSync(path));
    return `${size} ${Math.round(mtimeMs)}`;
  } catch {
    return undefined;
  }
}

/** Its version in place of its path: looking for the path would unpack it and start it. */
async function shippedUnopened(): Promise<{ path: string; libraries: undefined } | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  try {
    const packageFile = join(dirname(here.resolve('@sparticuz/chromium')), '..', '..', 'package.json');
    const { version } = JSON.parse(readFileSync(packageFile, 'utf8')) as { version: string };
    return { path: `shipped ${version}`, libraries: undefined };
  } catch {
    return undefined;
  }
}
