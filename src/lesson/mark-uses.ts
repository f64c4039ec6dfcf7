import type {
  BlockContent,
  DefinitionContent,
  Paragraph,
  Parents,
  PhrasingContent,
  Root,
  RootContent,
  Text,
} from 'mdast';
// For `hName` and `hProperties` in a node's data.
import type {} from 'mdast-util-to-hast';
import { lineEndAt, spanAt } from '../messages/source-place.ts';
import { type CheckedUse, type DirectiveNode, isDirective } from './check-directives.ts';

/**
 * Marks every right directive in the tree with its name and the place of its use in the list, for the page, and turns
 * every other back into the text that was typed. The content of a container that is not right stays as it is, but is
 * not marked: nobody knows what it is meant for.
 */
export function markUses(tree: Root, source: string, uses: readonly CheckedUse<never>[]): void {
  const places = new Map<DirectiveNode, number>(uses.map(({ node }, place) => [node, place]));
  const walk = (parent: Parents, marking: boolean): void => {
    const children = (parent.children as RootContent[]).flatMap((child): RootContent[] => {
      const place = isDirective(child) ? places.get(child) : undefined;
      if (!isDirective(child)) {
        if ('children' in child) walk(child, marking);
        return [child];
      }
      if (place === undefined) {
        if ('children' in child) walk(child, false);
        return asTyped(child, source);
      }
      mark(child, marking ? place : undefined);
      walk(child, marking);
      return [child];
    });
    parent.children = children as typeof parent.children;
  };
  walk(tree, true);
}

function mark(node: DirectiveNode, place: number | undefined): void {
  const use = place === undefined ? {} : { dataUse: String(place) };
  node.data = {
    ...node.data,
    hName: node.type === 'textDirective' ? 'span' : 'div',
    hProperties: { dataDirective: node.name, ...use },
  };
  if (node.type !== 'containerDirective') return;
  for (const child of node.children) {
    if (isLabel(child)) child.data = { ...child.data, hProperties: { dataDirectiveLabel: node.name } };
  }
}

/** The text in a container's brackets, which the parser puts first among its children. */
function isLabel({ data }: BlockContent | DefinitionContent): boolean {
  return data !== undefined && 'directiveLabel' in data;
}

function asTyped(node: DirectiveNode, source: string): RootContent[] {
  const start = node.position?.start.offset ?? 0;
  const end = node.position?.end.offset ?? start;
  const text = (from: number, to: number): Text => ({
    type: 'text',
    value: source.slice(from, to),
    position: spanAt(source, from, to),
  });
  const paragraph = (child: PhrasingContent): Paragraph => ({
    type: 'paragraph',
    children: [child],
    position: child.position,
  });
  if (node.type === 'textDirective') return [text(start, end)];
  if (node.type === 'leafDirective') return [paragraph(text(start, end))];
  const opening = paragraph(text(start, Math.min(lineEndAt(source, start), end)));
  const held = node.children.filter((child) => !isLabel(child));
  const lastLine = Math.max(source.lastIndexOf('\n', end - 1), source.lastIndexOf('\r', end - 1)) + 1;
  const fence = /:{3,}[ \t]*$/.exec(source.slice(Math.max(lastLine, start), end));
  const closes = fence !== null && lastLine > start;
  return [opening, ...held, ...(closes ? [paragraph(text(end - fence[0].length, end))] : [])];
}
