import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { EXIT, visit } from 'unist-util-visit';
import { z } from 'zod';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';
import { mostLinesOf, noteColumn, points } from '../margin.ts';

/** For notes as the page's style sets them. */
const size = points(8.3);

export const instructor = defineComponent<PacketContext, z.ZodType>({
  name: 'instructor',
  form: 'container',
  summary:
    "A note in the margin of the instructor's edition, beside the paragraph before it; the student's has an empty room there.",
  attributes: z.strictObject({}),
  example: ':::instructor\nAsk where the base turn will start before it is shown.\n:::',
  render: ({ children, context: { board, edition } }) => {
    const note = fitsMargin(needsContent('instructor', children));
    const lines = mostLinesOf(note, { width: noteColumn, size, measure: board.measure });
    const style = `--lines:${lines}`;
    return [
      edition === 'instructor'
        ? h('aside', { className: ['note', 'instructor'], style, ariaLabel: 'For the instructor' }, [...note])
        : h('div', { className: ['note', 'note-room'], style, ariaHidden: 'true' }),
    ];
  },
});

const tooLarge: Readonly<Record<string, string>> = {
  table: 'table',
  figure: 'drawing',
  img: 'picture',
  h1: 'heading',
  h2: 'heading',
  h3: 'heading',
  h4: 'heading',
  h5: 'heading',
  h6: 'heading',
};

function fitsMargin(children: readonly ElementContent[]): readonly ElementContent[] {
  const root: Root = { type: 'root', children: [...children] };
  let found: string | undefined;
  visit(root, 'element', ({ tagName }) => {
    found = tooLarge[tagName];
    return found === undefined ? undefined : EXIT;
  });
  if (found === undefined) return children;
  throw new DirectiveError(
    `\`instructor\` is a note in the margin, and a ${found} does not fit into it: put the ${found} below the note`,
  );
}
