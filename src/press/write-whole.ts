import { randomUUID } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/**
 * Writes a file so that whoever opens it finds the earlier one or the new one, whole: to a temporary name in the same
 * folder (a rename between file systems would be a copy), then renamed. Makes the folder where it is missing.
 * Where writing fails the earlier file stays, the temporary one goes, and the error is thrown on.
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const temporary = join(folder, `.${basename(path)}.${randomUUID()}`);
  try {
    const file = await open(temporary, 'wx');
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, path);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}
