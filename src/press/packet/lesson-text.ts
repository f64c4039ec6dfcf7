import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { VFile } from 'vfile';
import { type FrontMatter, readFrontMatter } from '../../lesson/front-matter.ts';
import { hasErrors } from '../../messages/failures.ts';
import type { School } from '../../school/school.ts';
import type { YamlSource } from '../../school/yaml-source.ts';
import { once } from './once.ts';
import type { SoundLesson } from './read-lesson.ts';

/** A lesson of which only the front matter has been read: most builds print few of the pages asked for. */
export interface LessonText {
  readonly file: VFile;
  /** Undefined where it has an error: then the whole lesson was read for its other messages. */
  readonly frontMatter: FrontMatter | undefined;
  readonly source: YamlSource | undefined;
  /** Reads the rest, once; undefined where the lesson has an error. */
  readonly read: () => Promise<SoundLesson | undefined>;
}

/** Opens a lesson of the school, by the name of its file without `.md`. */
export async function openText(school: School, name: string): Promise<LessonText> {
  const path = join(school.folder, `${name}.md`);
  const file = new VFile({ path, value: await readFile(path, 'utf8') });
  const head = readFrontMatter(file);
  const isSound = head?.value !== undefined && !hasErrors(file);
  const read = once(async () => (await import('./read-lesson.ts')).readLesson(school.folder, file));
  if (!isSound) await read();
  return { file, frontMatter: isSound ? head.value : undefined, source: head?.source, read };
}
