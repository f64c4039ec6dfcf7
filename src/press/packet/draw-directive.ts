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
  /** Empty where a message is an error, or where the directive is not for this context (`:::for`). */
  readonly nodes: readonly ElementContent[];
  /** Each with its place in the text; errors have `fatal` set. */
  readonly messages: readonly VFileMessage[];
}

/**
 * Draws one directive of the list, from its text as a lesson would have it: `::pattern{faults="base-turn-late"}`,
 * `:key[base-key]{show=height}`, `:::caution` with its content. A directive for a sentence gives only the words, without a paragraph.
 *
 * Whatever is typed, nothing is thrown: what is wrong with it, or cannot be drawn for this flight, is a message. Each call
 * counts its figures and ids from 1, so draw several for the same page as one lesson, through `rehypeLesson`.
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

/** The output alone, without the paragraph around a directive in a sentence. */
function nodesOf({ children }: Root, inSentence: boolean): ElementContent[] {
  return children.flatMap((node): ElementContent[] => {
    if (node.type !== 'element') return [];
    return inSentence ? node.children : [node];
  });
}

/** The place of whatever is there besides the first directive, or instead of it. */
function placeOf({ children, position }: Tree): Tree['position'] {
  return children.find((node, i) => i > 0 || !isDirective(node))?.position ?? position;
}
