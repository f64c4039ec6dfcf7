import { lstat, realpath } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import type { FileKind, SchoolFile } from '../api.ts';
import { Refusal } from './refusal.ts';

const folders: Readonly<Record<string, FileKind>> = {
  fleet: 'aircraft',
  airfields: 'airfield',
  faults: 'faults',
};

export const schoolFolders: readonly string[] = Object.keys(folders);

/** What kind of school file a path is; undefined for anything that the desk does not touch. */
export function schoolFile(path: string): SchoolFile | undefined {
  // Encoded slashes and NUL have no place in a name, and neither has what Windows reads as a drive, a stream or a
  // device.
  if (path.length > 300 || /[\p{Cc}\\%:*?"<>|]/u.test(path)) return undefined;
  const [first = '', second, ...deeper] = path.split('/');
  const name = second ?? first;
  const id = name.replace(/\.(md|yaml)$/, '');
  if (deeper.length > 0 || name.startsWith('.') || id === name || id === '' || /[. ]$|^[ ]/.test(id))
    return undefined;
  if (/^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(id)) return undefined;
  if (second !== undefined) {
    const kind = Object.hasOwn(folders, first) ? folders[first] : undefined;
    return kind && name.endsWith('.yaml') ? { path, kind, id } : undefined;
  }
  if (name === 'school.yaml') return { path, kind: 'school', id };
  return name.endsWith('.md') ? { path, kind: 'lesson', id } : undefined;
}

/**
 * Where a file of the school really is. Throws a `Refusal`: 403 for a path that the desk does not touch, and where a
 * symbolic link, of the file or of its folder, leads to such a path.
 *
 * @param root the school's folder, with every link followed
 */
export async function placeOf(root: string, path: string): Promise<string> {
  if (!schoolFile(path)) {
    throw new Refusal(
      403,
      'The desk reads and writes lessons (`name.md`), `school.yaml`, and YAML files in `fleet/`, `airfields/` and `faults/`; nothing else.',
    );
  }
  const [first, second] = path.split('/') as [string, string | undefined];
  const folder = second === undefined ? root : await followed(join(root, first));
  const place = await followed(join(folder, second ?? first));
  const real = relative(root, place).split(sep).join('/');
  if (!schoolFile(real))
    throw new Refusal(403, `\`${path}\` leads out of the school's folder: put the file itself there.`);
  return place;
}

/** A path with the link at its end followed; unchanged where there is nothing yet. */
async function followed(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch {
    const found = await lstat(path).catch(() => undefined);
    if (!found) return path;
    throw new Refusal(403, 'A link stands here that leads nowhere: remove it.');
  }
}
