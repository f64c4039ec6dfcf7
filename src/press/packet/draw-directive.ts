import type { ElementContent, Root } from 'hast';
import type { Root as Tree } from 'mdast';
import { VFile } from 'vfile';
import type { VFileMessage } from 'vfile-message';
import type { PacketContext } from '../../../components/context.ts';
import { components } from '../../../components/list.ts';
import { isDirective } from '../../lesson/check-directives.ts';
import { parseText } from '../../lesson/parse-lesson.ts';
import { renderLesson } from '../../lesson/render-lesson.ts';
import { fail, hasErrors } from '../../messages/failures.ts';

/** What one directive came to. */
export interface DrawnDirective {
  /** None where a message is an error, or where the directive is not for this context (`:::for`). */
  readonly nodes: readonly ElementContent[];
  /** Each with its place in the text; errors have `fatal` set. */
  readonly messages: readonly VFileMessage[];
}

/**
 * Draws one directive of the list, from its text as it would stand in a lesson: `::pattern{faults="base-turn-late"}`,
 * `:key[base-key]{show=height}`, `:::caution` with what it holds. One for a sentence gives the words alone, no paragraph.
 *
 * Whatever is typed, nothing is thrown: what is wrong with it, or cannot be drawn for this flight, is a message. Each call
 * counts its figures and ids from 1: draw several of the same page in one lesson, through `rehypeLesson`.
 */
export function drawDirective(source: string, context: PacketContext): DrawnDirective {
  const file = new VFile(source);
  const text = parseText<PacketContext>(file, components);
  const only = text.tree.children.length === 1 ? text.tree.children[0]! : undefined;
  const inSentence = only?.type === 'paragraph' && only.children.length === 1;
  if (!hasErrors(file) && !(only && isDirective(inSentence ? only.children[0]! : only)))
    fail(
      file,
      'Write one directive and nothing beside it, such as `::pattern`',
      'one-directive',
      placeOf(text.tree),
    );
  const drawn = hasErrors(file) ? undefined : renderLesson(text, context, file);
  return { nodes: drawn && !hasErrors(file) ? nodesOf(drawn, inSentence) : [], messages: file.messages };
}

/** Of a paragraph that holds one directive, what it came to. */
function nodesOf({ children }: Root, inSentence: boolean): ElementContent[] {
  return children.flatMap((node): ElementContent[] => {
    if (node.type !== 'element') return [];
    return inSentence ? node.children : [node];
  });
}

/** Of what stands there beside the first directive, or in its place. */
function placeOf({ children, position }: Tree): Tree['position'] {
  return children.find((node, i) => i > 0 || !isDirective(node))?.position ?? position;
}
