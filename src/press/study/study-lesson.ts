import type { Root } from 'hast';
import { toHast } from 'mdast-util-to-hast';
import type { VFile } from 'vfile';
import type { PacketContext } from '../../../components/context.ts';
import type { CheckedUse } from '../../lesson/check-directives.ts';
import type { CheckedText } from '../../lesson/parse-lesson.ts';
import { placeUses } from '../../lesson/rehype-lesson.ts';
import { type LiveMark, markLive } from './mark-live.ts';

/** Like `renderLesson`, with the marks by which the page on a screen finds what it makes again, and what it cannot. */
export function renderStudyLesson(
  lesson: CheckedText<PacketContext>,
  context: PacketContext,
  file: VFile,
): Root {
  const tree = toHast(lesson.tree, { clobberPrefix: '' }) as Root;
  return placeUses({ ...lesson, tree }, context, file, (output, use, place) => {
    const mark = markOf(use, place);
    return mark ? markLive(output, mark) : output;
  });
}

/** Containers hold the author's own words, which are neither. */
function markOf({ component }: CheckedUse<PacketContext>, place: number): LiveMark | undefined {
  if (component.onScreen === 'made-again') return { dataLive: String(place) };
  if (component.onScreen === 'unchanged') return undefined;
  return component.form === 'leaf' ? { dataPrinted: component.name } : undefined;
}
