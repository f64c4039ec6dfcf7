import { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { PacketContext } from '../../../components/context.ts';
import { components } from '../../../components/list.ts';
import { type Lesson, parseLesson } from '../../lesson/parse-lesson.ts';
import { hasErrors } from '../../messages/failures.ts';
import { picturesIn } from './lesson-pictures.ts';

/** A lesson without an error of its own. */
export interface SoundLesson {
  readonly lesson: Lesson<PacketContext>;
  /** Its warnings, before it is flown. */
  readonly messages: readonly VFileMessage[];
}

/**
 * Reads a lesson, with its messages on its file; undefined where one of them is an error. `folder` is that of its
 * pictures.
 */
export function readLesson(folder: string, file: VFile): SoundLesson | undefined {
  // Not on the file itself, which may have a message about an aircraft that the lesson cannot be flown with.
  const own = new VFile({ path: file.path, value: String(file) });
  const lesson = parseLesson<PacketContext>(own, components, { pictures: picturesIn(folder) });
  file.messages.push(...own.messages);
  return lesson.frontMatter && !hasErrors(own) ? { lesson, messages: own.messages } : undefined;
}
