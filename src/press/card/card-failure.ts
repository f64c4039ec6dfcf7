import type { Element } from 'hast';
import { h } from 'hastscript';
import { shortLine } from '../../words/card/short-line.ts';

/** Printed where the aircraft's file has no list. */
const noFailureList = 'No engine-failure list in its file.';

/**
 * The aircraft's own list in full, in its order; a line's catchword, where it has one, is bold. Beside it are the
 * keys of a stopped engine, named in the head, or the words that say why there are none.
 */
export function cardFailure(lines: readonly string[], withKeys: boolean): Element {
  return h('section', { class: 'failure', ariaLabelledBy: 'failure' }, [
    h('h2', { id: 'failure' }, `Engine failure${withKeys ? ': fly the keys of the engine stopped' : ''}`),
    lines.length === 0
      ? h('p', noFailureList)
      : h(
          'ol',
          lines.map((line) => h('li', withCatchword(line.trim()))),
        ),
  ]);
}

/** With more words than this it is the line itself, not a catchword. */
const catchword = 4;

function withCatchword(line: string): (Element | string)[] {
  const word = shortLine(line);
  const isShort = word.split(/\s+/).length <= catchword;
  return isShort && line.startsWith(word) ? [h('b', word), line.slice(word.length)] : [line];
}
