import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { access, chmod, open, readdir, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { UnwrittenError, writeWhole } from '../../press/printing/write-whole.ts';
import type {
  ConflictAnswer,
  FileAnswer,
  FilesAnswer,
  SavedAnswer,
  SaveRequest,
  SchoolFile,
} from '../api.ts';
import { Refusal } from './refusal.ts';
import { placeOf, schoolFile, schoolFolders } from './school-paths.ts';
import { inFormOf, plainText } from './text-form.ts';

/** A file as it is on the disk. */
export interface DiskFile {
  /** As it is written, with its own line ends and byte order mark. */
  readonly text: string;
  readonly version: string;
  readonly mode: number;
}

/** Bytes: as much as a request could save, and no more. */
const longest = 2 * 2 ** 20;

const order: readonly SchoolFile['kind'][] = ['school', 'lesson', 'aircraft', 'airfield', 'faults'];

export function versionOf(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** The files of one school that may be edited: their list, reading, saving. */
export class SchoolFiles {
  /** As the command was given it. */
  readonly folder: string;
  readonly #root: string;
  /** Saves of one file wait for each other: each sees the version that the one before made. */
  readonly #saves = new Map<string, Promise<unknown>>();
  readonly #onSaving: Set<(path: string, version: string | undefined) => void> = new Set();

  private constructor(folder: string, root: string) {
    this.folder = folder;
    this.#root = root;
  }

  /** Throws a `Refusal` where there is no such folder. */
  static async open(folder: string): Promise<SchoolFiles> {
    const root = await realpath(folder).catch(() => undefined);
    if (root === undefined) throw new Refusal(404, `There is no folder \`${folder}\`.`);
    return new SchoolFiles(folder, root);
  }

  get root(): string {
    return this.#root;
  }

  /** Is told of every save: before it with no version, after it with the new one, or with the old one where it failed. */
  onSaving(tell: (path: string, version: string | undefined) => void): void {
    this.#onSaving.add(tell);
  }

  async list(): Promise<FilesAnswer> {
    const listed = await Promise.all(['', ...schoolFolders].map((folder) => this.#listed(folder)));
    const byKind = (a: SchoolFile, b: SchoolFile) => order.indexOf(a.kind) - order.indexOf(b.kind);
    const files = listed.flat().sort((a, b) => byKind(a, b) || (a.path < b.path ? -1 : 1));
    return { folder: this.folder, files };
  }

  async #listed(folder: string): Promise<SchoolFile[]> {
    const entries = await readdir(join(this.#root, folder), { withFileTypes: true }).catch(() => []);
    const found = entries.map(async (entry) => {
      const file = schoolFile(folder === '' ? entry.name : `${folder}/${entry.name}`);
      if (!file || !(entry.isFile() || entry.isSymbolicLink())) return [];
      // A link to a folder outside the school is noticed at the first of its files.
      const isSure = folder === '' && entry.isFile();
      return isSure || (await this.#isInside(file.path)) ? [file] : [];
    });
    return (await Promise.all(found)).flat();
  }

  /** Throws a `Refusal`: 404 where there is none. */
  async read(path: string): Promise<FileAnswer> {
    const found = await this.disk(path);
    if (!found) throw new Refusal(404, `There is no file \`${path}\` in the school.`);
    return { path, text: plainText(found.text), version: found.version };
  }

  /** Undefined where there is no such file. */
  async disk(path: string): Promise<DiskFile | undefined> {
    return readWhole(await placeOf(this.#root, path), path);
  }

  /**
   * Saves a text, whole, in place of the version that it was made from. Throws a `Refusal`: 409 with a
   * `ConflictAnswer` where the disk has another version.
   */
  async save(request: SaveRequest): Promise<SavedAnswer> {
    const before = this.#saves.get(request.path) ?? Promise.resolve();
    const saving = before.then(
      () => this.#save(request),
      () => this.#save(request),
    );
    this.#saves.set(request.path, saving);
    try {
      return await saving;
    } finally {
      if (this.#saves.get(request.path) === saving) this.#saves.delete(request.path);
    }
  }

  async #save({ path, text, version }: SaveRequest): Promise<SavedAnswer> {
    const place = await placeOf(this.#root, path);
    const found = await readWhole(place, path);
    if ((found?.version ?? null) !== version) throw conflict(path, found);
    if (found) await mayWrite(place, path);
    const content = Buffer.from(found ? inFormOf(found.text, text) : plainText(text), 'utf8');
    const next = versionOf(content);
    this.#tell(path, undefined);
    try {
      await writeWhole(place, content);
      this.#tell(path, next);
    } catch (error) {
      this.#tell(path, found?.version ?? '');
      if (!(error instanceof UnwrittenError)) throw error;
      throw new Refusal(507, `${error.message}.`);
    }
    // A whole new file has taken the place of the old one: its permissions stay as they were.
    if (found) await chmod(place, found.mode & 0o777).catch(() => undefined);
    return { path, version: next };
  }

  #tell(path: string, version: string | undefined): void {
    for (const tell of this.#onSaving) tell(path, version);
  }

  async #isInside(path: string): Promise<boolean> {
    return placeOf(this.#root, path).then(
      () => true,
      () => false,
    );
  }
}

async function readWhole(place: string, path: string): Promise<DiskFile | undefined> {
  let file: Awaited<ReturnType<typeof open>>;
  try {
    // Follows no link put there in the meantime, and waits for no pipe.
    file = await open(place, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return undefined;
    throw new Refusal(403, `\`${path}\` cannot be read (${code}): look at its permissions.`);
  }
  try {
    const stats = await file.stat();
    if (!stats.isFile()) throw new Refusal(403, `\`${path}\` is no file.`);
    if (stats.size > longest)
      throw new Refusal(413, `\`${path}\` is larger than ${longest / 2 ** 20} MiB: no lesson is.`);
    const bytes = await file.readFile();
    return { text: decoded(bytes, path), version: versionOf(bytes), mode: stats.mode };
  } finally {
    await file.close();
  }
}

/** Bytes that are not UTF-8 would be lost when the file is saved. */
function decoded(bytes: Buffer, path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Refusal(422, `\`${path}\` is not UTF-8 text: save it as UTF-8 with the editor that made it.`);
  }
}

function conflict(path: string, found: DiskFile | undefined): Refusal {
  const more: Omit<ConflictAnswer, 'error'> = {
    path,
    text: found ? plainText(found.text) : null,
    version: found?.version ?? null,
  };
  const what = found ? 'was changed by another program' : 'is there no more';
  return new Refusal(409, `\`${path}\` ${what} since it was opened here: nothing is written.`, more);
}

async function mayWrite(place: string, path: string): Promise<void> {
  await access(place, constants.W_OK).catch(() => {
    throw new Refusal(403, `\`${path}\` may only be read: change its permissions.`);
  });
}
