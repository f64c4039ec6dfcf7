import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { isTemporary } from './write-whole.ts';

/** ms. No file is on its way to its place for an hour. */
const oldest = 3_600_000;

/** Removes what builds that were killed left in these folders: temporary files that nobody can be writing any more. */
export async function removeStale(folders: Iterable<string>, now: number = Date.now()): Promise<void> {
  for (const folder of new Set(folders)) {
    const names = await readdir(folder).catch(() => [] as string[]);
    for (const name of names.filter(isTemporary)) {
      const path = join(folder, name);
      const found = await stat(path).catch(() => undefined);
      if (found?.isFile() && now - found.mtimeMs > oldest)
        await rm(path, { force: true }).catch(() => undefined);
    }
  }
}
