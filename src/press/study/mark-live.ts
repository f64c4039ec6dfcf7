import type { ElementContent, Properties } from 'hast';
import { h } from 'hastscript';

/** The id of the element that holds the page's data. */
export const dataId = 'study-data';

/** How the output of a use is marked: made again for another setting, or left as printed. */
export type LiveMark = { readonly dataLive: string } | { readonly dataPrinted: string };

/**
 * Puts the mark on every element; words of a sentence are put into a `span` to carry it, which does not change the
 * layout.
 */
export function markLive(output: readonly ElementContent[], mark: LiveMark): ElementContent[] {
  return output.map((node) => {
    if (node.type === 'element') return { ...node, properties: { ...node.properties, ...mark } };
    return node.type === 'text' ? h('span', mark as Properties, [node]) : node;
  });
}
