import { type FSWatcher, watch } from 'node:fs';
import { join } from 'node:path';
import type { FileEvent } from '../api.ts';
import type { SchoolFiles } from './school-files.ts';
import { schoolFolders } from './school-paths.ts';

/** ms: an editor writes a file in several steps. */
const settle = 80;
/** ms: folders on some network drives report nothing. */
const lookAgain = 3_000;

/** Reports changes of a school that the desk has not made. */
export interface Watching {
  close(): void;
}

/**
 * Watches the files of a school, and reports once each time the content of one has changed or it is gone. What the
 * system says about a folder is only a reason to look: the versions decide. The desk's own saves are not reported.
 */
export async function watchSchool(files: SchoolFiles, tell: (event: FileEvent) => void): Promise<Watching> {
  const known = new Map<string, string | null>();
  const saving = new Set<string>();
  const watchers = new Map<string, FSWatcher>();
  let closed = false;
  let timer: NodeJS.Timeout | undefined;
  let looking: Promise<void> = Promise.resolve();

  files.onSaving((path, version) => {
    if (version === undefined) {
      saving.add(path);
      return;
    }
    known.set(path, version === '' ? null : version);
    saving.delete(path);
    soon();
  });

  const look = async (isFirst: boolean): Promise<void> => {
    watchFolders();
    const listed = (await files.list()).files.map(({ path }) => path);
    for (const path of new Set([...listed, ...known.keys()])) {
      if (saving.has(path)) continue;
      const before = known.get(path) ?? null;
      // One that cannot be read now is looked at again.
      const found = await files.disk(path).catch(() => undefined);
      const version = found?.version ?? null;
      // It was saved while it was being read.
      if (closed || saving.has(path) || (known.get(path) ?? null) !== before) continue;
      if (version === before) continue;
      known.set(path, version);
      if (!isFirst) tell({ path, version });
    }
  };
  const lookOnce = (isFirst: boolean): Promise<void> => {
    looking = looking.then(() => (closed ? undefined : look(isFirst))).catch(() => undefined);
    return looking;
  };
  const soon = () => {
    if (closed) return;
    clearTimeout(timer);
    timer = setTimeout(() => void lookOnce(false), settle);
    timer.unref();
  };
  const watchFolders = () => {
    for (const folder of ['', ...schoolFolders]) {
      if (watchers.has(folder) || closed) continue;
      const drop = () => {
        watchers.get(folder)?.close();
        watchers.delete(folder);
        soon();
      };
      try {
        const watcher = watch(join(files.root, folder), { persistent: false });
        watchers.set(folder, watcher);
        // On a folder that was moved or removed: it is watched again when it is back.
        watcher
          .on('change', (event) => (event === 'rename' && folder !== '' ? drop() : soon()))
          .on('error', drop);
      } catch {
        // There is no such folder yet; the next regular look tries again.
      }
    }
  };

  await lookOnce(true);
  const clock = setInterval(() => void lookOnce(false), lookAgain);
  clock.unref();
  return {
    close: () => {
      closed = true;
      clearTimeout(timer);
      clearInterval(clock);
      for (const watcher of watchers.values()) watcher.close();
      watchers.clear();
    },
  };
}
