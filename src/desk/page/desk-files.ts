import { isolateHistory } from '@codemirror/commands';
import { diff } from '@codemirror/merge';
import type { EditorState, TransactionSpec } from '@codemirror/state';
import { Text } from '@codemirror/state';
import type { SchoolFile } from '../api.ts';
import { askFile, askFiles, askSave, Refused } from './ask.ts';
import { askBoth, besideName } from './both-dialog.ts';
import { isUnsaved, keep, kept, letGo, type OnDisk, type OpenFile, setBase, textOf } from './open-files.ts';

export interface FilesHooks {
  readonly state: (file: SchoolFile, text: string) => EditorState;
  /** Applies a change to the text of a file, in the editor if the file is there. */
  readonly dispatch: (file: OpenFile, change: (state: EditorState) => TransactionSpec) => void;
  /** Something about a file or the list has changed. */
  readonly changed: () => void;
  readonly say: (words: string) => void;
}

/** The files that are open, what is on the disk for each, and how the two are brought together. */
export class DeskFiles {
  readonly #hooks: FilesHooks;
  readonly #open = new Map<string, OpenFile>();
  #list: readonly SchoolFile[] = [];
  #folder = '';
  #deciding: Promise<void> = Promise.resolve();

  constructor(hooks: FilesHooks) {
    this.#hooks = hooks;
  }

  /** Those of the school, and those that exist only here now. */
  get list(): readonly SchoolFile[] {
    const listed = new Set(this.#list.map(({ path }) => path));
    const gone = [...this.#open.values()].filter(({ path }) => !listed.has(path));
    return [...this.#list, ...gone.map(({ path, kind }) => ({ path, kind, id: idOf(path) }))];
  }

  get folder(): string {
    return this.#folder;
  }

  get(path: string): OpenFile | undefined {
    return this.#open.get(path);
  }

  get unsaved(): OpenFile[] {
    return [...this.#open.values()].filter(isUnsaved);
  }

  async readList(): Promise<void> {
    const { folder, files } = await askFiles();
    this.#folder = folder;
    this.#list = files;
    this.#hooks.changed();
  }

  /** Reads a file, or takes it as it was left. */
  async open(path: string): Promise<OpenFile> {
    const already = this.#open.get(path);
    if (already) return already;
    const listed = this.#list.find((file) => file.path === path);
    const before = kept(this.#folder, path);
    const disk = await askFile(path).catch((error: unknown): OnDisk => {
      // Removed while its text was being typed: the text is still here.
      if (before && error instanceof Refused && error.status === 404) return { text: '', version: null };
      throw error;
    });
    const file = this.#made(listed ?? { path, kind: kindOf(path), id: idOf(path) }, disk);
    if (before && before.text !== disk.text) {
      if (before.base.version !== disk.version) {
        setBase(file, before.base);
        file.other = disk;
      }
      this.#hooks.dispatch(file, (state) => changesTo(state, before.text));
    }
    return file;
  }

  #made(listed: SchoolFile, disk: OnDisk): OpenFile {
    const { path, kind } = listed;
    const file: OpenFile = {
      path,
      kind,
      state: this.#hooks.state(listed, disk.text),
      base: disk,
      baseDoc: Text.empty,
      other: undefined,
      saving: undefined,
    };
    setBase(file, disk);
    // Two asked for it at once: the first one has it.
    const first = this.#open.get(path);
    if (first) return first;
    this.#open.set(path, file);
    return file;
  }

  /** Forgets a file that is not on the disk, and its text. */
  drop(file: OpenFile): void {
    this.#open.delete(file.path);
    letGo(this.#folder, file.path);
    this.#hooks.changed();
  }

  /** Makes a new file. Throws a `Refused` where there is one of this name. */
  async create(path: string, text: string): Promise<void> {
    const saved = await askSave({ path, text, version: null });
    if ('error' in saved)
      throw new Refused(409, `There is a file \`${path}\` already: choose another title.`);
    await this.readList();
  }

  /** Writes a file, unless another program has: then both texts are shown. Returns whether it is saved. */
  async save(file: OpenFile): Promise<boolean> {
    if (file.saving) await file.saving;
    if (file.other) return this.decide(file);
    if (!isUnsaved(file)) {
      this.#hooks.say('There is nothing new to save.');
      return true;
    }
    const text = textOf(file);
    const saving = this.#write(file, text, file.base.version);
    file.saving = saving.then(
      () => undefined,
      () => undefined,
    );
    const isSaved = await saving.finally(() => {
      file.saving = undefined;
    });
    return isSaved || this.decide(file);
  }

  /** Returns false where another program was first; `other` has its text. */
  async #write(file: OpenFile, text: string, version: string | null): Promise<boolean> {
    const answer = await askSave({ path: file.path, text, version });
    if ('error' in answer) {
      file.other = { text: answer.text ?? '', version: answer.version };
      this.#hooks.changed();
      return false;
    }
    const wasGone = file.base.version === null;
    setBase(file, { text, version: answer.version });
    file.other = undefined;
    keep(this.#folder, file);
    this.#hooks.say(`${file.path} is saved.`);
    this.#hooks.changed();
    if (wasGone) await this.readList();
    return true;
  }

  /**
   * Another program has changed a file. Where nothing is changed here, the new text is taken; otherwise both are kept
   * until a choice is made.
   */
  async lookAt(path: string): Promise<void> {
    const file = this.#open.get(path);
    if (!this.#list.some((each) => each.path === path) || !file) await this.readList();
    if (!file) return;
    await file.saving;
    const disk = await askFile(path).catch((error: unknown): OnDisk | undefined => {
      if (error instanceof Refused && error.status === 404) return { text: '', version: null };
      if (error instanceof Refused) return undefined;
      throw error;
    });
    if (!disk || disk.version === file.base.version) {
      // It is again the text that ours was made from.
      if (disk && file.other) file.other = undefined;
      this.#hooks.changed();
      return;
    }
    if (disk.version === null) {
      const had = isUnsaved(file);
      if (had && file.base.version !== null) file.other = disk;
      else setBase(file, { text: file.base.text, version: null });
      this.#hooks.say(
        `${path} was taken away by another program. Its text is still here: save it, or let it go.`,
      );
      await this.readList();
    } else if (!isUnsaved(file) || textOf(file) === disk.text) {
      setBase(file, disk);
      file.other = undefined;
      this.#hooks.dispatch(file, (state) => changesTo(state, disk.text));
      this.#hooks.say(`${path} was changed by another program; its new text is here.`);
    } else {
      file.other = disk;
      this.#hooks.say(`${path} was changed by another program too.`);
    }
    keep(this.#folder, file);
    this.#hooks.changed();
  }

  /** After a time without a connection, in which events may have been missed. */
  async lookAtAll(): Promise<void> {
    await this.readList();
    for (const path of this.#open.keys()) await this.lookAt(path);
  }

  /** Shows both texts and does what is chosen; one file at a time. Returns whether nothing is left to save. */
  decide(file: OpenFile): Promise<boolean> {
    const decided = this.#deciding.then(() => this.#decide(file));
    this.#deciding = decided.then(
      () => undefined,
      () => undefined,
    );
    return decided;
  }

  async #decide(file: OpenFile): Promise<boolean> {
    for (;;) {
      const { other } = file;
      if (!other) return !isUnsaved(file);
      const mine = textOf(file);
      const taken = new Set(this.#list.map(({ path }) => path));
      const beside = besideName(file.path, taken);
      const theirs = other.version === null ? null : other.text;
      const decision = await askBoth({ path: file.path, mine, theirs, beside });
      if (decision === 'later') return false;
      if (decision === 'mine') {
        // Once more, where the other program has written again in the meantime.
        if (await this.#write(file, textOf(file), other.version)) return true;
        continue;
      }
      if (decision === 'theirs' && theirs === null) {
        this.drop(file);
        return true;
      }
      if (decision === 'both') {
        const saved = await askSave({ path: beside!, text: mine, version: null });
        if ('error' in saved) {
          await this.readList();
          continue;
        }
        this.#hooks.say(`Yours is saved as ${beside}.`);
      }
      setBase(file, other);
      file.other = undefined;
      this.#hooks.dispatch(file, (state) => changesTo(state, other.text));
      keep(this.#folder, file);
      await this.readList();
      return true;
    }
  }
}

/** Only what differs, so that the cursor stays with its words; one step of undo. */
function changesTo(state: EditorState, text: string): TransactionSpec {
  const changes = diff(state.doc.toString(), text).map(({ fromA, toA, fromB, toB }) => ({
    from: fromA,
    to: toA,
    insert: text.slice(fromB, toB),
  }));
  return { changes, annotations: isolateHistory.of('full'), userEvent: 'input.taken' };
}

const idOf = (path: string) => path.slice(path.lastIndexOf('/') + 1).replace(/\.(md|yaml)$/, '');

/** For a file that is no longer in the school's list. */
function kindOf(path: string): SchoolFile['kind'] {
  const kinds: Readonly<Record<string, SchoolFile['kind']>> = {
    fleet: 'aircraft',
    airfields: 'airfield',
    faults: 'faults',
    'school.yaml': 'school',
  };
  return kinds[path.split('/')[0]!] ?? 'lesson';
}
