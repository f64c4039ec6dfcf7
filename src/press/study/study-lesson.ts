import type { Root } from 'hast';
import { toHast } from 'mdast-util-to-hast';
import type { VFile } from 'vfile';
import type { PacketContext } from '../../../components/context.ts';
import type { CheckedUse } from '../../lesson/check-directives.ts';
import type { Lesson } from '../../lesson/parse-lesson.ts';
import { placeUses } from '../../lesson/rehype-lesson.ts';
import { liveComponents } from './live-components.ts';
import { type LiveMark, markLive } from './mark-live.ts';

type LessonUse = Pick<CheckedUse<PacketContext>, 'component'>;

export function isLive({ component }: LessonUse): boolean {
  return liveComponents.get(component.name)?.form === component.form;
}

/** As `renderLesson`, with the marks by which the page on a screen finds what it makes again, and what it can not. */
export function renderStudyLesson(lesson: Lesson<PacketContext>, context: PacketContext, file: VFile): Root {
  const author = toHast(lesson.tree, { clobberPrefix: '' }) as Root;
  return placeUses(author, lesson.uses, lesson.pictures, context, file, (output, use, place) => {
    const mark = markOf(use, place);
    return mark ? markLive(output, mark) : output;
  });
}

/** The same in every setting. */
const fixed = new Set(['checklist']);

/** Containers hold the author's own words: they are neither. */
function markOf(use: LessonUse, place: number): LiveMark | undefined {
  if (isLive(use)) return { dataLive: String(place) };
  if (fixed.has(use.component.name)) return undefined;
  return use.component.form === 'leaf' ? { dataPrinted: use.component.name } : undefined;
}
