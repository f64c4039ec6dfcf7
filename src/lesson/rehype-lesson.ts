import type { ElementContent, Root, RootContent } from 'hast';
import { defaultSchema, type Schema, sanitize } from 'hast-util-sanitize';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import { numberCaptions } from './captions.ts';
import type { CheckedUse } from './check-directives.ts';
import { DirectiveError } from './component.ts';
import { idsIn, nameHeadings } from './headings.ts';
import type { FoundPicture } from './pictures.ts';

export interface RehypeLessonOptions<Context> {
  /** What the components are rendered for. */
  readonly context: Context;
}

/**
 * The second half of the lesson language, as a rehype plugin after `remarkLesson` and remark-rehype: renders the
 * directives through the components that `remarkLesson` was given.
 *
 * The author's tree is sanitized first; the directives' own output (drawings included) and the pictures that were
 * found are put in after that. What a directive finds wrong becomes a message at its place. Throws only what a
 * component throws that is neither a `DirectiveError` nor a `RangeError`: a mistake in its code.
 */
export default function rehypeLesson<Context>({
  context,
}: RehypeLessonOptions<Context>): (tree: Root, file: VFile) => Root {
  return (tree, file) => {
    // The list is the one that `remarkLesson` made with the components of this pipeline, which are for this context.
    const uses = (file.data.directiveUses ?? []) as unknown as readonly CheckedUse<Context>[];
    return placeUses({ tree, uses, pictures: file.data.foundPictures ?? [] }, context, file);
  };
}

/**
 * The author's part of the page. Ids are kept as they are: an author cannot write one, and they come only from
 * footnotes.
 * `dataUse` and `dataPicture` mark where a directive's output and a picture go; an author cannot write those either.
 */
const schema: Schema = {
  ...defaultSchema,
  clobber: [],
  attributes: {
    ...defaultSchema.attributes,
    div: [...(defaultSchema.attributes?.div ?? []), 'dataDirective', 'dataUse'],
    span: [...(defaultSchema.attributes?.span ?? []), 'dataDirective', 'dataUse'],
    p: [...(defaultSchema.attributes?.p ?? []), 'dataDirectiveLabel'],
    img: [...(defaultSchema.attributes?.img ?? []), 'dataPicture'],
  },
  // An empty list would allow every kind. A picture has none of these: its own address is put in later.
  protocols: { ...defaultSchema.protocols, href: ['http', 'https', 'mailto'], src: ['none'] },
};

/**
 * Marks what a use of a directive rendered, for whoever looks for it in the page later; `place` is the use's place in
 * the list.
 */
export type MarkOutput<Context> = (
  output: ElementContent[],
  use: CheckedUse<Context>,
  place: number,
) => ElementContent[];

/** The author's tree, and what goes where it has its marks. */
export interface MarkedTree<Context> {
  readonly tree: Root;
  readonly uses: readonly CheckedUse<Context>[];
  readonly pictures: readonly FoundPicture[];
}

/** The page's content, from the author's tree with its marks, which is not changed. */
export function placeUses<Context>(
  { tree, uses, pictures }: MarkedTree<Context>,
  context: Context,
  file: VFile,
  mark: MarkOutput<Context> = (output) => output,
): Root {
  const author = sanitize(tree, schema) as Root;

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
      const { dataUse, dataPicture } = node.properties;
      const picture = pictures[Number(dataPicture ?? Number.NaN)];
      if (picture) {
        const { dataPicture: _, ...properties } = node.properties;
        const { src, width, height } = picture;
        return [{ ...node, properties: { ...properties, src, width, height } }];
      }
      const use = uses[Number(dataUse ?? Number.NaN)];
      if (use) {
        const { component, attributes } = use;
        if (component.isFor?.({ attributes, context }) === false) return [];
        const held = component.form === 'container' || component.holdsText ? withoutLabel(node.children) : [];
        const inner = fill(held);
        // All of it is for other packets, or was found wrong and reported.
        return isBlank(inner) && !isBlank(held) ? [] : mark(renderUse(use, inner), use, Number(dataUse));
      }
      const children = fill(node.children);
      // A paragraph or an item that held nothing else leaves no empty line or bullet.
      const emptied = /^(p|li)$/.test(node.tagName) && !isBlank(node.children) && isBlank(children);
      return emptied ? [] : [{ ...node, children }];
    });
  const page: Root = { type: 'root', children: fill(author.children) };
  numberCaptions(page);
  nameHeadings(page);
  checkInnerLinks(page, file);
  for (const component of new Set(uses.map((use) => use.component))) component.finish?.(page);
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

function withoutLabel(nodes: readonly ElementContent[]): ElementContent[] {
  return nodes.filter((node) => node.type !== 'element' || node.properties.dataDirectiveLabel === undefined);
}

/** Checks the author's links (only those have a place in the lesson) to headings that the packet does not have. */
function checkInnerLinks(page: Root, file: VFile): void {
  const ids = idsIn(page);
  visit(page, 'element', (node) => {
    const { href } = node.properties;
    if (node.tagName !== 'a' || typeof href !== 'string' || !href.startsWith('#') || !node.position) return;
    let id = href.slice(1);
    try {
      id = decodeURIComponent(id);
    } catch {
      // A `%` that encodes nothing is looked up as it is.
    }
    if (!ids.has(id))
      fail(file, `Nothing in this lesson is called \`#${id}\`${didYouMean(id, ids)}`, 'link', node.position);
  });
}
