import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { VFile } from 'vfile';
import type { PacketContext } from '../../components/context.ts';
import { components } from '../../components/list.ts';
import { type Lesson, parseLesson } from '../lesson/parse-lesson.ts';
import { picturesIn } from '../press/packet/lesson-pictures.ts';

export interface ReadLesson {
  readonly file: VFile;
  readonly lesson: Lesson<PacketContext>;
}

/** Every lesson of the school by its id: a lesson may need any other. */
export async function readLessons(folder: string): Promise<Map<string, ReadLesson>> {
  const names = await readdir(folder).catch(() => [] as string[]);
  const found = new Map<string, ReadLesson>();
  for (const name of names.filter((each) => each.endsWith('.md') && !each.startsWith('.')).sort()) {
    const path = join(folder, name);
    const file = new VFile({ path, value: await readFile(path, 'utf8') });
    const lesson = parseLesson<PacketContext>(file, components, { pictures: picturesIn(folder) });
    found.set(name.slice(0, -'.md'.length), { file, lesson });
  }
  return found;
}
