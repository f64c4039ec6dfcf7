import { toHtml } from 'hast-util-to-html';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { DirectiveError, defineComponent } from './component.ts';
import { parseLesson } from './parse-lesson.ts';
import { renderLesson } from './render-lesson.ts';

interface Day {
  readonly windy: boolean;
}

const common = { name: 'windy', summary: 'Only on a windy day.', attributes: z.strictObject({}) };
const isFor = ({ context }: { context: Day }) => context.windy;
const components = [
  defineComponent<Day, z.ZodType>({
    ...common,
    form: 'container',
    example: ':::windy',
    isFor,
    render: ({ children }) => children,
  }),
  defineComponent<Day, z.ZodType>({
    ...common,
    form: 'text',
    holdsText: true,
    example: ':windy[hold on]',
    isFor,
    render: ({ children }) => children,
  }),
  defineComponent<Day, z.ZodType>({
    name: 'outer',
    form: 'container',
    summary: 'A section.',
    attributes: z.strictObject({}),
    example: ':::outer',
    render: ({ children }) => [{ type: 'element', tagName: 'section', properties: {}, children }],
  }),
  defineComponent<Day, z.ZodType>({
    name: 'gust',
    form: 'text',
    summary: 'The gust of a windy day.',
    attributes: z.strictObject({}),
    label: z.string(),
    example: ':gust[speed]',
    render: ({ label, context }) => {
      if (context.windy) return [{ type: 'text', value: `${label} 20` }];
      throw new DirectiveError('No gust today');
    },
  }),
];

function page(body: string, windy = true) {
  const file = new VFile(`---\ntitle: T\n---\n${body}\n`);
  const html = toHtml(renderLesson(parseLesson(file, components), { windy }, file));
  return {
    html: html.replace(/\n/g, ''),
    messages: file.messages.map(({ line, column, reason }) => `${line}:${column} ${reason}`),
  };
}

describe('a directive with two forms', () => {
  it('is rendered in each, with what stands in it', () => {
    expect(page(':::windy\na\n:::\n\nb :windy[*c* :gust[d]]')).toEqual({
      html: '<p>a</p><p>b <em>c</em> d 20</p>',
      messages: [],
    });
  });

  it('names both where it is written in a third', () => {
    expect(page('::windy').messages).toEqual([
      expect.stringMatching(
        /^4:1 `windy` is written `:::windy` on a line of its own.*, or `:windy\[…\]` in a sentence$/,
      ),
    ]);
    expect(page('a :windy{b=c} d').messages).toEqual([
      expect.stringMatching(/`windy` needs its text in brackets/),
    ]);
    expect(page(':::windy{\na\n:::').messages).toEqual([expect.stringMatching(/an example: `:::windy`/)]);
  });
});

describe('what is not for this packet', () => {
  it('is left out before a figure in it is asked for, and leaves no empty paragraph', () => {
    const body = ':::windy\nAt :gust[a].\n:::\n\n:windy[:gust[b]]\n\n- :windy[c]\n- d';
    expect(page(body, false)).toEqual({ html: '<ul><li>d</li></ul>', messages: [] });
  });

  it('leaves nothing of what holds nothing else', () => {
    expect(page('::::outer\n:::windy\na\n:::\n::::', false)).toEqual({ html: '', messages: [] });
    expect(page('::::outer\n:::windy\na\n:::\n::::').html).toBe('<section><p>a</p></section>');
  });

  it('is still checked: a mistake in it shows in every packet', () => {
    expect(page(':::windy\n:gusst[a]\n:::', false).messages).toEqual([
      expect.stringMatching(/^5:1 No directive is called `gusst`; did you mean `:gust/),
    ]);
  });
});
