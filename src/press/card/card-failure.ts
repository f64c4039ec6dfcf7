import type { Element } from 'hast';
import { h } from 'hastscript';
import { shortLine } from '../../../components/kneeboard/short-line.ts';

/** Stands where the aircraft's file has no list. */
export const noFailureList = 'No engine-failure list in its file.';

/** The aircraft's own list in full, in its order; a line's catchword, where it has one, is bold. */
export function cardFailure(lines: readonly string[]): Element {
  return h('section', { class: 'failure', ariaLabelledBy: 'failure' }, [
    h('h2', { id: 'failure' }, 'Engine failure'),
    lines.length === 0
      ? h('p', noFailureList)
      : h(
          'ol',
          lines.map((line) => h('li', withCatchword(line.trim()))),
        ),
  ]);
}

/** More words than these are the line itself. */
const catchword = 4;

function withCatchword(line: string): (Element | string)[] {
  const word = shortLine(line);
  const isShort = word.split(/\s+/).length <= catchword;
  return isShort && line.startsWith(word) ? [h('b', word), line.slice(word.length)] : [line];
}
