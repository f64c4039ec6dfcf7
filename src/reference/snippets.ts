import { VFile } from 'vfile';
import type { PacketContext } from '../../components/context.ts';
import type { Component } from '../lesson/component.ts';
import { colonsOf } from '../lesson/directive-form.ts';
import { parseLesson } from '../lesson/parse-lesson.ts';
import { type DescribedSchema, describeSchema } from '../school/json-schema.ts';
import type { AuthorFile } from './author-file.ts';

interface Snippet {
  readonly scope: 'markdown';
  readonly prefix: string;
  readonly body: readonly string[];
  readonly description: string;
}

type Directive = Component<PacketContext>;

/** Every directive as an editor's snippet: typed by its colons and name, with its places filled in as in its example. */
export function snippetFile(directives: readonly Directive[]): AuthorFile {
  const names = directives.map(({ name }) => name);
  const snippets = Object.fromEntries(
    directives.map((directive) => {
      const { name, form } = directive;
      const isOnlyForm = names.filter((each) => each === name).length === 1;
      return [isOnlyForm ? name : `${name} (${colonsOf[form]})`, snippetOf(directive)];
    }),
  );
  return { path: 'schemas/lesson.code-snippets.json', content: `${JSON.stringify(snippets, null, 2)}\n` };
}

function snippetOf(directive: Directive): Snippet {
  const { name, form, summary } = directive;
  const typed = exampleUse(directive);
  const stops = new Stops();
  const head = `${colonsOf[form]}${name}${brackets(directive, typed.label, stops)}${braces(directive, typed, stops)}`;
  const body =
    form === 'container'
      ? [head, ...stops.free(typed.content).split('\n'), ':::', '$0']
      : [head, ...(form === 'leaf' ? ['$0'] : [])];
  return { scope: 'markdown', prefix: `${colonsOf[form]}${name}`, body, description: plainText(summary) };
}

function brackets({ label, holdsText }: Directive, typed: string, stops: Stops): string {
  if (holdsText) return `[${stops.free(typed)}]`;
  return label ? `[${stops.of(describeSchema(label), typed)}]` : '';
}

/** What must be given, and what the example gives. */
function braces({ attributes }: Directive, typed: ExampleUse, stops: Stops): string {
  const { properties = {}, required = [] } = describeSchema(attributes);
  const wanted = Object.entries(properties).filter(
    ([name]) => name in typed.attributes || required.includes(name),
  );
  const pairs = wanted.map(([name, schema]) => {
    const value = typed.attributes[name] ?? schema.sample ?? '';
    const place = stops.of(schema, value);
    const mayHoldSpace = !schema.enum && /\s/.test(value + (schema.sample ?? ''));
    return `${name}=${mayHoldSpace ? `"${place}"` : place}`;
  });
  return pairs.length === 0 ? '' : `{${pairs.join(' ')}}`;
}

interface ExampleUse {
  readonly label: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** For a container. */
  readonly content: string;
}

/** What the directive's own example gives at its first use. */
function exampleUse(directive: Directive): ExampleUse {
  const file = new VFile(`---\ntitle: Example\n---\n\n${directive.example}\n`);
  const source = String(file);
  const use = parseLesson(file, [directive]).uses[0];
  if (!use)
    throw new Error(`The example of \`${directive.name}\` does not use it: ${file.messages.join('; ')}`);
  const { node } = use;
  const attributes = Object.fromEntries(
    Object.entries(node.attributes ?? {}).map(([name, value]) => [name, value ?? '']),
  );
  const [first, last] = [node.children[0]?.position, node.children.at(-1)?.position];
  const inside = first && last ? source.slice(first.start.offset, last.end.offset) : '';
  return { label: use.label || inside, attributes, content: inside };
}

/** The numbered places of a snippet, where the cursor stops. */
class Stops {
  #count = 0;

  /** A place with choices where there is a choice, the example's own first. */
  of({ enum: choices }: DescribedSchema, typed: string): string {
    if (!choices) return this.free(typed);
    const others = choices.map(String).filter((each) => each !== typed);
    return `\${${this.#next()}|${[typed, ...others].map((each) => each.replace(/[\\,|]/g, '\\$&')).join(',')}|}`;
  }

  free(text: string): string {
    return `\${${this.#next()}:${text.replace(/[\\$}]/g, '\\$&')}}`;
  }

  #next(): number {
    this.#count += 1;
    return this.#count;
  }
}

/** An editor shows a description without reading it as Markdown. */
function plainText(markdown: string): string {
  return markdown.replaceAll('`', '');
}
