import type { Root } from 'hast';
import { toHast } from 'mdast-util-to-hast';
import type { VFile } from 'vfile';
import type { CheckedText } from './parse-lesson.ts';
import { placeUses } from './rehype-lesson.ts';

/**
 * Turns a checked lesson into a page's content; the lesson is not changed, and may be rendered again for another
 * context. What a directive finds wrong becomes a message at its place.
 */
export function renderLesson<Context>(lesson: CheckedText<Context>, context: Context, file: VFile): Root {
  const tree = toHast(lesson.tree, { clobberPrefix: '' }) as Root;
  return placeUses({ ...lesson, tree }, context, file);
}
