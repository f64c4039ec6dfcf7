import { execFile } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { createReadStream, createWriteStream, existsSync, readFileSync } from 'node:fs';
import { mkdir, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';
import { createBrotliDecompress } from 'node:zlib';

/** The browser inside the optional npm package: the same bytes on every Linux machine, so the same pages too. */
export interface ShippedBrowser {
  readonly path: string;
  /** Folder of the libraries it carries; undefined where the machine has its own. */
  readonly libraries: string | undefined;
}

const here = createRequire(import.meta.url);
const packageName = '@sparticuz/chromium';

/**
 * Unpacks the shipped browser to a versioned folder in `cacheFolder`, once, and gives its path. Undefined where the
 * package is not installed or holds nothing for this machine. The package itself unpacks into a shared folder without
 * a version, and not atomically (two that start at once crash); ours unpacks beside it and renames. Throws where the
 * cache folder cannot be written or the unpacked browser does not start.
 */
export async function shippedBrowser(cacheFolder: string): Promise<ShippedBrowser | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  const root = packageFolder();
  if (root === undefined) return undefined;
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  const folder = join(cacheFolder, `browser-${version}`);
  if (!existsSync(folder)) await unpackInto(folder, root);
  const path = join(folder, 'chromium');
  const libraries = join(folder, 'lib');
  if (await starts(path, {})) return { path, libraries: undefined };
  if (await starts(path, { LD_LIBRARY_PATH: libraries })) return { path, libraries };
  throw new Error(`${path} does not start on this machine`);
}

function packageFolder(): string | undefined {
  try {
    return join(dirname(here.resolve(packageName)), '..', '..');
  } catch {
    return undefined;
  }
}

async function unpackInto(folder: string, root: string): Promise<void> {
  const temporary = `${folder}.${randomUUID()}`;
  await mkdir(temporary, { recursive: true });
  try {
    // tar-fs is what the package itself reads its archives with: it is taken from there, because it is as optional as
    // the package.
    const { extract } = createRequire(here.resolve(packageName))('tar-fs') as {
      extract: (target: string) => NodeJS.WritableStream;
    };
    const bin = join(root, 'bin');
    await Promise.all([
      pipeline(
        createReadStream(join(bin, 'chromium.br')),
        createBrotliDecompress({ chunkSize: 2 ** 21 }),
        createWriteStream(join(temporary, 'chromium'), { mode: 0o755 }),
      ),
      pipeline(createReadStream(join(bin, 'al2023.tar.br')), createBrotliDecompress(), extract(temporary)),
    ]);
    await rename(temporary, folder);
  } catch (error) {
    await rm(temporary, { recursive: true, force: true });
    // Another run may have put the folder there in the meantime: then it is complete, as ours would have been.
    if (!existsSync(folder)) throw error;
  }
}

async function starts(path: string, environment: Record<string, string>): Promise<boolean> {
  try {
    await promisify(execFile)(path, ['--version'], {
      env: { ...process.env, ...environment },
      timeout: 20_000,
    });
    return true;
  } catch {
    return false;
  }
}
