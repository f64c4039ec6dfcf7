import { readFileSync } from 'node:fs';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import type { PacketContext } from '../../components/context.ts';
import { components, groups } from '../../components/list.ts';
import { colonsOf } from '../lesson/directive-form.ts';
import { parseLesson } from '../lesson/parse-lesson.ts';
import { describeSchema } from '../school/json-schema.ts';
import { describeKind, quantityKinds } from '../units/quantity.ts';
import { authorFiles } from './author-files.ts';
import { lessonHead } from './definitions.ts';
import { flyWords } from './fly-words.ts';

const files = authorFiles({ groups, flyWords });
const contentOf = (path: string) => files.find((file) => file.path === path)!.content;
const page = contentOf('docs/lesson-language.md');
const sections = new Map(
  page
    .split(/^### /m)
    .slice(1)
    .map((section) => [/^`([\w-]+)`/.exec(section)?.[1], section]),
);

function messagesOf(lesson: string): string[] {
  const whole = lesson.startsWith('---\n') ? lesson : `---\ntitle: Example\n---\n\n${lesson}\n`;
  const file = new VFile({ path: 'example.md', value: whole });
  parseLesson<PacketContext>(file, components);
  return file.messages.map(({ line, reason }) => `${line}: ${reason} in ${lesson}`);
}

describe("the author's files in the repository", () => {
  it.each(files.map((file) => [file.path, file.content] as const))(
    '%s is what `chalkwing reference` writes',
    (path, content) => {
      expect(readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8')).toBe(content);
    },
  );
});

describe('the page of the lesson language', () => {
  it('has every directive once, and no other', () => {
    expect([...sections.keys()].sort()).toEqual([...new Set(components.map(({ name }) => name))].sort());
  });

  it.each(
    components.map((component) => [`${colonsOf[component.form]}${component.name}`, component] as const),
  )(
    'has what may be written in %s: its summary, every attribute, every name in brackets, its example',
    (_, { name, summary, attributes, label, example }) => {
      const section = sections.get(name)!;
      expect(section).toContain(summary.replace(/\.$/, ''));
      expect(section).toContain(`\n${example}\n`);
      for (const [attribute, schema] of Object.entries(describeSchema(attributes).properties ?? {})) {
        expect(section).toMatch(new RegExp(`^\\| \`${attribute}\` \\| \\w`, 'm'));
        expect(schema.takes ?? schema.enum, `what to write for ${attribute}`).toBeDefined();
      }
      const { enum: names = [], meanings } = label ? describeSchema(label) : {};
      for (const each of names) expect(section).toContain(`\`${each}\``);
      if (meanings) expect(Object.keys(meanings)).toEqual(names);
    },
  );

  it('has every key of the head of a lesson', () => {
    for (const key of Object.keys(describeSchema(lessonHead.definition).properties!)) {
      expect(page).toContain(`\n| \`${key}\` | `);
    }
  });

  it('has every unit', () => {
    for (const unit of quantityKinds.flatMap((kind) => describeKind(kind).units)) {
      expect(page).toContain(`\`${unit}\``);
    }
  });

  it('has no example that a lesson may not hold', () => {
    const examples = [...page.matchAll(/^````markdown\n(.*?)^````$/gms)].map(([, example]) => example!);
    expect(examples.length).toBeGreaterThan(components.length);
    expect(examples.flatMap(messagesOf)).toEqual([]);
  });

  it('has no link that leads nowhere', () => {
    const linked = [...page.matchAll(/\]\(#([\w-]+)\)/g)].map(([, name]) => name);
    expect(linked.filter((name) => !sections.has(name))).toEqual([]);
    expect(linked).toHaveLength(sections.size);
  });
});

describe('the page of the school files', () => {
  it('has what `fly` may say, where faults are flown', () => {
    const words = [
      { written: 'spacing: +40 %', takes: 'a share', does: 'the downwind leg lies farther out' },
    ];
    const school = authorFiles({ groups, flyWords: words }).find(
      ({ path }) => path === 'docs/school-files.md',
    )!;
    expect(school.content).toContain(
      '| `fly: "spacing: +40 %"` | a share | the downwind leg lies farther out |',
    );
  });
});

describe('the snippets', () => {
  const snippets: Record<string, { prefix: string; body: string[]; description: string }> = JSON.parse(
    contentOf('schemas/lesson.code-snippets.json'),
  );

  it('are one for each directive and form', () => {
    expect(Object.values(snippets).map(({ prefix }) => prefix)).toEqual(
      components.map(({ form, name }) => `${colonsOf[form]}${name}`),
    );
  });

  it.each(Object.entries(snippets))(
    '`%s` gives a directive that is right as it comes',
    (_, { prefix, body }) => {
      const typed = expand(body.join('\n'));
      expect(typed).not.toContain('$');
      expect(typed.startsWith(prefix)).toBe(true);
      expect(messagesOf(typed)).toEqual([]);
    },
  );

  it.each(Object.entries(snippets))('`%s` offers no choice that the check refuses', (_, { body }) => {
    const choices = [...body.join('\n').matchAll(/\$\{(\d+)\|([^}]*)\|\}/g)];
    for (const [whole, , list] of choices) {
      for (const choice of list!.split(',')) {
        expect(messagesOf(expand(body.join('\n').replace(whole, choice)))).toEqual([]);
      }
    }
  });
});

/** What an editor types for a snippet: each place as its text, or as the first of its choices. */
function expand(body: string): string {
  return body
    .replace(/\$\{\d+\|([^,|]*)[^}]*\|\}/g, '$1')
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/gs, (_, text: string) => text.replace(/\\(.)/g, '$1'))
    .replace(/\$0/g, '');
}
