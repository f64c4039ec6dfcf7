import { toHtml } from 'hast-util-to-html';
import { s } from 'hastscript';
import { VFile } from 'vfile';
import { z } from 'zod';
import { type Component, DirectiveError, defineComponent } from './component.ts';
import { type Lesson, parseLesson } from './parse-lesson.ts';
import { renderLesson } from './render-lesson.ts';

// For this room's tests: one directive of each form, and a lesson read and rendered with them in one go.

/** What the trial directives are rendered for: the figures of the keys. */
export type Trial = Readonly<Record<string, string>>;

const key = defineComponent<
  Trial,
  z.ZodObject<{ show: z.ZodDefault<z.ZodEnum<Record<'height' | 'along', 'height' | 'along'>>> }>
>({
  name: 'key',
  form: 'text',
  summary: 'A figure of a key position.',
  attributes: z.strictObject({ show: z.enum(['height', 'along']).default('height') }),
  label: z.enum(['downwind-key', 'final', 'overhead']),
  example: ':key[downwind-key]',
  render: ({ label, attributes, context }) => {
    const figure = context[label];
    if (figure === undefined) throw new DirectiveError(`This approach has no \`${label}\``);
    if (figure === 'NaN') throw new RangeError('NaN cannot be printed');
    if (figure === 'broken') throw new TypeError('A mistake in our own code');
    return [{ type: 'text', value: `${attributes.show} ${figure}` }];
  },
});

const pattern = defineComponent<Trial, z.ZodType>({
  name: 'pattern',
  form: 'leaf',
  summary: 'A drawing.',
  attributes: z.strictObject({ caption: z.string().optional() }),
  example: '::pattern{caption="From above"}',
  render: ({ ordinal }) => [s('svg', { onLoad: `drawn(${ordinal})` })],
});

const container = (name: string) =>
  defineComponent<Trial, z.ZodType>({
    name,
    form: 'container',
    summary: 'A part of the plan.',
    attributes: z.strictObject({}),
    example: `:::${name}`,
    render: ({ children }) => [
      { type: 'element', tagName: 'section', properties: { className: [name] }, children },
    ],
  });

export const trialComponents: readonly Component<Trial>[] = [
  key,
  pattern,
  container('objective'),
  container('standards'),
];

export interface TrialResult {
  readonly lesson: Lesson<Trial>;
  readonly html: string;
  /** `line:column rule reason`, in the order of the lesson. */
  readonly messages: readonly string[];
  readonly file: VFile;
}

export const trialFrontMatter = '---\ntitle: Trial\n---\n';

/** Reads and renders `body` under sound front matter (three lines), or `source` as a whole file. */
export function tryBody(
  body: string,
  keys: Trial = { 'downwind-key': '1,000 ft', final: '300 ft' },
): TrialResult {
  return tryLesson(trialFrontMatter + body, keys);
}

export function tryLesson(source: string, keys: Trial = {}): TrialResult {
  const file = new VFile({ path: 'trial.md', value: source });
  const lesson = parseLesson(file, trialComponents);
  const html = toHtml(renderLesson(lesson, keys, file));
  const sorted = [...file.messages].sort(
    (a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0),
  );
  const messages = sorted.map(({ line, column, ruleId, reason }) => `${line}:${column} ${ruleId} ${reason}`);
  return { lesson, html, messages, file };
}
