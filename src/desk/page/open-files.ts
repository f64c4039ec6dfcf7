import { type EditorState, Text } from '@codemirror/state';
import type { FileKind } from '../api.ts';

/** What is on the disk, as far as the desk knows. `version` null: nothing. */
export interface OnDisk {
  readonly text: string;
  readonly version: string | null;
}

/** A file that was opened, with what is typed in it. */
export interface OpenFile {
  readonly path: string;
  readonly kind: FileKind;
  state: EditorState;
  /** What `state` was made from. */
  base: OnDisk;
  /** `base.text`, to compare with. */
  baseDoc: Text;
  /** What another program has written since, until somebody decides about it. */
  other: OnDisk | undefined;
  /** The save that is under way. */
  saving: Promise<void> | undefined;
}

export function setBase(file: OpenFile, base: OnDisk): void {
  file.base = base;
  file.baseDoc = Text.of(base.text.split('\n'));
}

export function isUnsaved(file: OpenFile): boolean {
  return file.base.version === null || !file.state.doc.eq(file.baseDoc);
}

export const textOf = (file: OpenFile) => file.state.doc.toString();

/** What a reload of the page would lose. */
interface Kept {
  readonly text: string;
  readonly base: OnDisk;
}

const keyOf = (school: string, path: string) => `desk ${school} ${path}`;

/** Keeps the unsaved text of a file while this window is open. What the browser has no room for is not kept. */
export function keep(school: string, file: OpenFile): void {
  const key = keyOf(school, file.path);
  try {
    if (isUnsaved(file)) {
      sessionStorage.setItem(key, JSON.stringify({ text: textOf(file), base: file.base } satisfies Kept));
    } else sessionStorage.removeItem(key);
  } catch {
    sessionStorage.removeItem(key);
  }
}

/** Forgets what was kept of a file. */
export function letGo(school: string, path: string): void {
  sessionStorage.removeItem(keyOf(school, path));
}

export function kept(school: string, path: string): Kept | undefined {
  const text = sessionStorage.getItem(keyOf(school, path));
  return text === null ? undefined : (JSON.parse(text) as Kept);
}

/** Paths of files with unsaved text from before a reload. */
export function keptPaths(school: string): string[] {
  const start = keyOf(school, '');
  return Object.keys(sessionStorage)
    .filter((key) => key.startsWith(start))
    .map((key) => key.slice(start.length));
}
