import type { Root as HastRoot } from 'hast';
import type { Root } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import rehypeStringify from 'rehype-stringify';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { PacketContext } from '../components/context.ts';
import { components } from '../components/list.ts';
import { contextOf, flyTrial, sayIn } from '../components/trial-packet.ts';
import { type Component, defineComponent } from '../src/lesson/component.ts';
import { parseLesson } from '../src/lesson/parse-lesson.ts';
import rehypeLesson from '../src/lesson/rehype-lesson.ts';
import remarkLesson from '../src/lesson/remark-lesson.ts';

// The lesson language in pipelines that know nothing else of this project: with other people's plugins before and
// after it.

const source = [
  'The glide is 6:1 at 10:30 on the map 1:5000, note:this, and wind: is said.',
  'At :key[base-key]{show=height} look at the spot.',
  '::pattern',
  ':::caution\nMind the *wind* at 5:1.\n:::',
].join('\n\n');

/** Without a context: directives stay what they are. */
const bare = () =>
  unified()
    .use(remarkParse)
    .use(remarkLesson<PacketContext>, { components })
    .use(remarkRehype)
    .use(rehypeStringify);

const context = contextOf(flyTrial());
const rendering = () =>
  unified()
    .use(remarkParse)
    .use(remarkLesson<PacketContext>, { components })
    .use(remarkRehype)
    .use(rehypeLesson<PacketContext>, { context })
    .use(rehypeStringify);

const said = (file: VFile) =>
  file.messages.map(({ line, column, fatal, reason }) => `${line}:${column} ${fatal} ${reason}`);

describe('the plugin in a bare pipeline', () => {
  it('leaves colons in plain text as typed', async () => {
    const file = await bare().process(source);
    expect(file.messages).toEqual([]);
    expect(String(file)).toContain(
      '<p>The glide is 6:1 at 10:30 on the map 1:5000, note:this, and wind: is said.</p>',
    );
    expect(String(file)).toContain('at 5:1.');
  });

  it('names its directives in the page, with what they hold', async () => {
    const html = String(await bare().process(source));
    expect(html).toContain('At <span data-directive="key" data-use="0">base-key</span> look');
    expect(html).toContain('<div data-directive="pattern" data-use="1"></div>');
    expect(html).toMatch(
      /<div data-directive="caution" data-use="2"><p>Mind the <em>wind<\/em> at 5:1\.<\/p><\/div>/,
    );
  });

  it('gives nodes of the directive syntax, and their checked attributes beside the tree', () => {
    const processor = unified()
      .use(remarkParse)
      .use(remarkLesson<PacketContext>, { components });
    const file = new VFile(source);
    const tree = processor.runSync(processor.parse(file), file) as Root;
    const nodes: string[] = [];
    visit(tree, (node) => {
      if ('name' in node) nodes.push(`${node.type} ${node.name}`);
    });
    expect(nodes).toEqual(['textDirective key', 'leafDirective pattern', 'containerDirective caution']);
    expect(file.data.directiveUses?.map(({ component, label }) => [component.name, label])).toEqual([
      ['key', 'base-key'],
      ['pattern', ''],
      ['caution', ''],
    ]);
    expect(file.data.directiveUses?.[0]?.attributes).toMatchObject({ show: 'height' });
    const hast = toHast(tree) as HastRoot;
    expect(hast.children.filter(({ type }) => type === 'element')).toHaveLength(4);
  });

  it('names the nearest directive where one is unknown, at its place, and gives its text back', async () => {
    const file = await bare().process('One.\n\n::patern{wind="210/12kt"}\n\nTwo.');
    expect(said(file)).toEqual([
      expect.stringMatching(/^3:1 true No directive is called `patern`; did you mean `::pattern`/),
    ]);
    expect(String(file)).toContain('<p>::patern{wind="210/12kt"}</p>');
  });

  it('gives back the text of one that is wrong in its braces or brackets, and keeps what a container holds', async () => {
    const file = await bare().process(
      'At :key[basekey]{show=height} look.\n\n::::caution{colour=red}\nOne *word* at :key[final].\n\n- a\n::::\n\nEnd.',
    );
    expect(said(file)).toEqual([
      expect.stringMatching(/^1:9 true .*did you mean `base-key`/),
      expect.stringMatching(/^3:\d+ true .*`colour`/),
    ]);
    const html = String(file).replaceAll('\n', '');
    expect(html).toContain('<p>At :key[basekey]{show=height} look.</p>');
    // The figure in it is known, but not whether it belongs on the page: it is named and not counted.
    expect(html).toContain(
      '<p>::::caution{colour=red}</p><p>One <em>word</em> at <span data-directive="key">final</span>.</p>' +
        '<ul><li>a</li></ul><p>::::</p><p>End.</p>',
    );
  });

  it('takes HTML out, even where the pipeline would let it through', async () => {
    const file = await unified()
      .use(remarkParse)
      .use(remarkLesson<PacketContext>, { components })
      .use(remarkRehype, { allowDangerousHtml: true })
      .use(rehypeStringify, { allowDangerousHtml: true })
      .process('<script>a()</script>\n\na <b onclick="x()">b</b>');
    expect(String(file)).toBe('<p>a b</p>');
    expect(said(file)).toEqual([
      expect.stringMatching(/^1:1 false HTML is left out/),
      expect.stringMatching(/^3:3 .*HTML is left out/),
      expect.stringMatching(/^3:\d+ .*HTML is left out/),
    ]);
  });

  it('takes any list of components', async () => {
    const word = defineComponent({
      name: 'word',
      form: 'text',
      summary: 'A word.',
      attributes: z.strictObject({}),
      label: z.string(),
      example: ':word[a]',
      render: ({ label, context: mark }) => [{ type: 'text', value: `${label}${mark}` }],
    }) as Component<string>;
    const file = await unified()
      .use(remarkParse)
      .use(remarkLesson<string>, { components: [word] })
      .use(remarkRehype)
      .use(rehypeLesson<string>, { context: '!' })
      .use(rehypeStringify)
      .process('A :word[b] at 6:1 and :key[base-key].');
    expect(String(file)).toBe('<p>A b! at 6:1 and :key[base-key].</p>');
    expect(said(file)).toEqual([expect.stringMatching(/^1:23 true No directive is called `key`/)]);
  });

  it('says what is missing where there is no parser before it', () => {
    expect(() =>
      unified()
        .use(remarkLesson<PacketContext>, { components })
        .freeze(),
    ).toThrow(/Put remark-parse before/);
  });
});

describe('the plugin with a context', () => {
  it('renders the directives as the packet does', async () => {
    const file = await rendering().process(source);
    expect(file.messages).toEqual([]);
    const html = String(file);
    const figure = sayIn(':key[base-key]{show=height}', context.plan);
    expect(figure).toMatch(/^\d[\d,]* ft$/);
    expect(html.replaceAll('\u00a0', ' ')).toContain(`<p>At ${figure} look at the spot.</p>`);
    expect(html).toMatch(/<figure[\s\S]*<svg[\s\S]*<\/svg>/);
    expect(html).toMatch(/class="[^"]*caution[^"]*"[\s\S]*Mind the <em>wind<\/em> at 5:1/);
    expect(html).not.toContain('data-use');
  });

  it('reports what only the flight shows to be wrong, at its place', async () => {
    const file = await rendering().process('At :key[overhead] look.');
    expect(said(file)).toEqual([expect.stringMatching(/^1:4 true .*overhead/)]);
  });

  it("sanitizes the author's part, whatever stands between the two plugins", async () => {
    const file = await unified()
      .use(remarkParse)
      .use(remarkLesson<PacketContext>, { components })
      .use(remarkRehype)
      .use(() => (tree: HastRoot) => {
        tree.children.push({
          type: 'element',
          tagName: 'a',
          properties: { href: 'javascript:a()', onClick: 'a()' },
          children: [{ type: 'element', tagName: 'script', properties: {}, children: [] }],
        });
      })
      .use(rehypeLesson<PacketContext>, { context })
      .use(rehypeStringify)
      .process('Text.');
    expect(String(file)).toBe('<p>Text.</p><a></a>');
  });
});

describe('a lesson', () => {
  it('is read through the same plugin: the same directives are found', async () => {
    const file = new VFile(`---\ntitle: T\n---\n${source}`);
    const { uses } = parseLesson(file, components);
    expect(file.messages).toEqual([]);
    const alone = await bare().process(source);
    expect(uses.map(({ component }) => component)).toEqual(
      alone.data.directiveUses?.map(({ component }) => component),
    );
    expect(file.data.directiveUses).toBe(uses);
  });
});
