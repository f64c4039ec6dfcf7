import type { Element, ElementContent, Root, RootContent } from 'hast';
import { defaultSchema, type Schema, sanitize } from 'hast-util-sanitize';
import type { Nodes } from 'mdast';
import { type State, toHast } from 'mdast-util-to-hast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { didYouMean } from '../school/nearest-name.ts';
import { fail } from '../school/yaml-source.ts';
import { numberCaptions } from './captions.ts';
import type { CheckedUse, DirectiveNode } from './check-directives.ts';
import { DirectiveError } from './component.ts';
import { idsIn, nameHeadings } from './headings.ts';
import type { Lesson } from './parse-lesson.ts';

/**
 * The author's part of the page. Ids are kept as they are: an author cannot write one, they come from footnotes alone.
 * `dataDirective` marks where a directive's output goes; an author cannot write that either.
 */
const schema: Schema = {
  ...defaultSchema,
  clobber: [],
  attributes: {
    ...defaultSchema.attributes,
    div: [...(defaultSchema.attributes?.div ?? []), 'dataDirective'],
    span: [...(defaultSchema.attributes?.span ?? []), 'dataDirective'],
  },
  protocols: { ...defaultSchema.protocols, href: ['http', 'https', 'mailto'], src: ['https'] },
};

/**
 * Turns a checked lesson into a page's content. The author's tree is sanitized first; the directives' own output
 * (drawings among it, as `raw` nodes) is put in after that. What a directive finds wrong becomes a message at its place.
 */
export function renderLesson<Context>(lesson: Lesson<Context>, context: Context, file: VFile): Root {
  const places = new Map<DirectiveNode, number>(lesson.uses.map(({ node }, index) => [node, index]));
  const placeholder = (_state: State, node: DirectiveNode): Element | undefined => {
    const index = places.get(node);
    if (index === undefined) return undefined;
    const { form, holdsText } = lesson.uses[index]!.component;
    const children = form === 'container' || holdsText ? _state.all(withoutLabel(node)) : [];
    const tagName = node.type === 'textDirective' ? 'span' : 'div';
    return { type: 'element', tagName, properties: { dataDirective: String(index) }, children };
  };
  const handlers = {
    textDirective: placeholder,
    leafDirective: placeholder,
    containerDirective: placeholder,
  };
  const author = sanitize(toHast(lesson.tree, { clobberPrefix: '', handlers }) as Root, schema) as Root;

  const renderUse = (use: CheckedUse<Context>, children: ElementContent[]): ElementContent[] => {
    const { component, attributes, label, ordinal, node } = use;
    try {
      return component.render({ attributes, label, ordinal, children, context });
    } catch (error) {
      const reason = reasonOf(error, component.name);
      if (reason === undefined) throw error;
      fail(file, reason, `directive-${component.name}`, node.position);
      return [];
    }
  };
  const fill = <Node extends RootContent>(nodes: readonly Node[]): (Node | ElementContent)[] =>
    nodes.flatMap((node): (Node | ElementContent)[] => {
      if (node.type !== 'element') return [node];
      const use = lesson.uses[Number(node.properties.dataDirective ?? Number.NaN)];
      if (use) {
        const { component, attributes } = use;
        if (component.isFor?.({ attributes, context }) === false) return [];
        const inner = fill(node.children);
        // All of it is for other packets, or was found wrong and reported.
        return isBlank(inner) && !isBlank(node.children) ? [] : renderUse(use, inner);
      }
      const children = fill(node.children);
      // Of a paragraph or an item that held nothing else, no empty line or bullet is left.
      const emptied = /^(p|li)$/.test(node.tagName) && !isBlank(node.children) && isBlank(children);
      return emptied ? [] : [{ ...node, children }];
    });
  const page: Root = { type: 'root', children: fill(author.children) };
  numberCaptions(page);
  nameHeadings(page);
  checkInnerLinks(page, file);
  return page;
}

function isBlank(nodes: readonly ElementContent[]): boolean {
  return nodes.every((node) => node.type === 'text' && node.value.trim() === '');
}

/** RangeError is how drawings and figures refuse what cannot be drawn or is not a number. */
function reasonOf(error: unknown, name: string): string | undefined {
  if (error instanceof DirectiveError) return error.message;
  if (error instanceof RangeError) return `\`${name}\` cannot be made for this flight: ${error.message}`;
  return undefined;
}

function withoutLabel<Node extends Nodes & { children: { data?: object | undefined }[] }>(node: Node): Node {
  const isLabel = (child: { data?: object | undefined }) => child.data && 'directiveLabel' in child.data;
  return { ...node, children: node.children.filter((child) => !isLabel(child)) };
}

/** Links of the author (only those have a place in the lesson) to a heading that the packet does not have. */
function checkInnerLinks(page: Root, file: VFile): void {
  const ids = idsIn(page);
  visit(page, 'element', (node) => {
    const { href } = node.properties;
    if (node.tagName !== 'a' || typeof href !== 'string' || !href.startsWith('#') || !node.position) return;
    let id = href.slice(1);
    try {
      id = decodeURIComponent(id);
    } catch {
      // A `%` that encodes nothing is looked up as it stands.
    }
    if (!ids.has(id))
      fail(file, `Nothing in this lesson is called \`#${id}\`${didYouMean(id, ids)}`, 'link', node.position);
  });
}
