import type { Element, ElementContent } from 'hast';
import type { DrawingBoard } from '../src/drawing/kit/drawing.ts';
import { textOf } from '../src/lesson/headings.ts';
import type { PacketContext } from './context.ts';

// What is in one edition only gets room of the same height in the other, so that both break their pages alike. The
// height is worked out here from the text, not measured in a browser: a packet has the same HTML everywhere.

/** mm, to the right of the text and inside the width of a drawing: where notes go. */
export const noteColumn = 40;
/** mm between the text and the note column. */
export const noteGap = 6;

/** mm: the width of a line of the page's text. */
export function textWidth({ drawingRoom }: Pick<PacketContext, 'drawingRoom'>): number {
  return drawingRoom.width - noteColumn - noteGap;
}

/** Words set to one width and size, mm, in the sans face. */
export interface Setting {
  readonly width: number;
  readonly size: number;
  readonly measure: DrawingBoard['measure'];
}

/** mm from a printer's points. */
export function points(value: number): number {
  return (value * 25.4) / 72;
}

/**
 * The most lines that a text can take: every word as wide as in bold, and no word parted from a figure before it. A
 * browser that can break at more places, or finds a word narrower, needs no more.
 */
export function mostLines(text: string, { width, size, measure }: Setting): number {
  const words = text
    .replace(/(?<=\d)\s+/g, '\u00a0')
    .split(/[^\S\u00a0\u202f]+/)
    .filter((word) => word !== '');
  const space = measure('a a', size, 'bold') - 2 * measure('a', size, 'bold');
  let lines = 0;
  let used = Number.POSITIVE_INFINITY;
  for (const word of words) {
    const length = measure(word, size, 'bold');
    if (used + space + length <= width) used += space + length;
    else {
      lines += 1;
      used = length;
    }
  }
  return lines;
}

const listIndent = 4;

/** Lines of paragraphs and lists set one below the other, with half a line between them. */
export function mostLinesOf(content: readonly ElementContent[], setting: Setting): number {
  const blocks = content.filter((node): node is Element => node.type === 'element');
  const lines = blocks.map((block) => {
    if (!/^(ul|ol)$/.test(block.tagName)) return mostLines(textOf(block), setting);
    const inner = { ...setting, width: setting.width - listIndent };
    return itemsOf(block).reduce((sum, item) => sum + itemLines(item, inner), 0);
  });
  return lines.reduce((sum, count) => sum + count, 0) + Math.max(0, blocks.length - 1) / 2;
}

function itemLines(item: Element, setting: Setting): number {
  const hasBlocks = item.children.some(
    (child) => child.type === 'element' && /^(p|ul|ol|div|blockquote)$/.test(child.tagName),
  );
  return hasBlocks ? mostLinesOf(item.children, setting) : mostLines(textOf(item), setting);
}

function itemsOf(list: Element): Element[] {
  return list.children.filter((child): child is Element => child.type === 'element');
}
