import { randomUUID } from 'node:crypto';
import { lstat, mkdir, open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join, relative } from 'node:path';

export interface WholeFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** A file could not be written; the earlier one stays. The message names it and says what to do. */
export class UnwrittenError extends Error {
  override readonly name = 'UnwrittenError';
  /** No other file can be written either until something is done about it. */
  readonly stopsAll: boolean;

  constructor(path: string, cause: NodeJS.ErrnoException) {
    super(`${relative('.', path)} is not written: ${whyUnwritten(path, cause)}`, { cause });
    this.stopsAll = ['ENOSPC', 'EDQUOT', 'EROFS'].includes(cause.code ?? '');
  }
}

/**
 * Writes a file so that whoever opens it finds the earlier one or the new one, complete: to a temporary name in the
 * same folder (a rename between file systems would be a copy), then renamed. Makes the folder where it is missing.
 * Where writing fails, the earlier file stays, the temporary one is removed, and an UnwrittenError is thrown.
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  await writeTogether([{ path, content }]);
}

/**
 * Writes files that belong together, each as `writeWhole` does: none is put in place before all of them are on the
 * disk. They are put in place in the order given, so that a new last file says that the others are new too.
 */
export async function writeTogether(files: readonly WholeFile[]): Promise<void> {
  const temporaries: string[] = [];
  let at = '';
  try {
    for (const { path, content } of files) {
      at = path;
      const temporary = join(dirname(path), `.${basename(path)}.${randomUUID()}`);
      temporaries.push(temporary);
      await writeOne(temporary, content);
    }
    // Checked before the first is renamed, so that none is.
    for (const { path } of files) {
      at = path;
      if (await isFolder(path)) throw Object.assign(new Error(`${path} is a folder`), { code: 'EISDIR' });
    }
    for (const [index, { path }] of files.entries()) {
      at = path;
      await rename(temporaries[index]!, path);
    }
  } catch (error) {
    for (const temporary of temporaries) await rm(temporary, { force: true }).catch(() => undefined);
    throw new UnwrittenError(at, error as NodeJS.ErrnoException);
  }
}

/** Whether a file has the kind of name that is given to files on the way to their place. */
export function isTemporary(name: string): boolean {
  return /^\..+\.[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/.test(name);
}

async function writeOne(path: string, content: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const file = await open(path, 'wx');
  try {
    await file.writeFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function isFolder(path: string): Promise<boolean> {
  return lstat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
}

function whyUnwritten(path: string, { code, message }: NodeJS.ErrnoException): string {
  const folder = `\`${relative('.', dirname(path)) || '.'}\``;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return 'the disk is full. Make room, then give the same command again';
    case 'EROFS':
      return `${folder} can only be read. Name another folder with --out`;
    case 'EACCES':
    case 'EPERM':
      return `you may not write in ${folder}, or another program holds the file open. Close it there, change the permissions, or name another folder with --out`;
    case 'EBUSY':
      return 'another program holds the file open. Close it there, then give the same command again';
    case 'EISDIR':
      return 'a folder stands in its place. Rename or remove that folder, or name another one with --out';
    case 'ENOTDIR':
    case 'EEXIST':
      return `a file stands where the folder ${folder} belongs. Rename or remove that file, or name another folder with --out`;
    case 'ENOENT':
      // A folder on a read-only disk is answered the same way.
      return `the folder ${folder} cannot be made: its disk can only be read, or is gone. Name another folder with --out`;
    case 'ENAMETOOLONG':
      return 'its name is too long for the disk. Give the lesson or the aircraft a shorter one';
    default:
      return message;
  }
}
