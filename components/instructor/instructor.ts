import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { EXIT, visit } from 'unist-util-visit';
import { z } from 'zod';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import type { PacketContext } from '../context.ts';
import { needsContent } from '../lesson-part.ts';

export const instructor = defineComponent<PacketContext, z.ZodType>({
  name: 'instructor',
  form: 'container',
  summary: "A note in the margin of the instructor's edition; the student's does not have it.",
  attributes: z.strictObject({}),
  example: ':::instructor\nAsk where the base turn will start before it is shown.\n:::',
  isFor: ({ context }) => context.edition === 'instructor',
  render: ({ children }) => [
    h('aside', { className: ['note', 'instructor'], ariaLabel: 'For the instructor' }, [
      ...fitsMargin(needsContent('instructor', children)),
    ]),
  ],
});

function fitsMargin(children: readonly ElementContent[]): readonly ElementContent[] {
  const root: Root = { type: 'root', children: [...children] };
  let wide: string | undefined;
  visit(root, 'element', ({ tagName }) => {
    if (tagName !== 'table' && tagName !== 'figure') return undefined;
    wide = tagName === 'table' ? 'table' : 'drawing';
    return EXIT;
  });
  if (wide === undefined) return children;
  throw new DirectiveError(
    `\`instructor\` is a note in the margin, and a ${wide} does not fit into it: put the ${wide} below the note`,
  );
}
