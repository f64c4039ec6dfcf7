import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { isTemporary } from './write-whole.ts';

/** ms. No file takes an hour to be put in place. */
const oldest = 3_600_000;

/** Removes what killed builds left in these folders: temporary files that nobody can still be writing. */
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
