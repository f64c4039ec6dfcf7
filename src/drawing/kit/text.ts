import type { Container } from '@svgdotjs/svg.js';
import type { DrawingBoard } from './drawing.ts';
import type { Box, Point } from './geometry.ts';
import { face, ink, size } from './ink.ts';
import { mm } from './sheet.ts';

/** One line of a label. */
export interface TextLine {
  readonly text: string;
  readonly bold?: boolean | undefined;
}

export type Anchor = 'start' | 'middle' | 'end';

/** How text is set: to the left, the size of a label and in ink, where it is not said. */
export interface TextStyle {
  readonly align?: Anchor | undefined;
  /** mm. */
  readonly size?: number;
  readonly fill?: string;
}

/** Size in mm of a block of lines, from the top of the capitals to the foot of the descenders. */
export function blockSize(board: DrawingBoard, lines: readonly TextLine[], textSize: number = size.label) {
  const widths = lines.map((line) => board.measure(line.text, textSize, line.bold ? 'bold' : 'regular'));
  return {
    width: Math.max(...widths),
    height: textSize * (face.cap + face.descent + face.leading * (lines.length - 1)),
  };
}

/** Sets a block of lines in a box of `blockSize`, against its left side, in the middle or against its right side. */
export function setBlock(into: Container, lines: readonly TextLine[], box: Box, style: TextStyle = {}): void {
  const { align = 'start', size: textSize = size.label } = style;
  const x = box.x + (align === 'start' ? 0 : align === 'end' ? box.width : box.width / 2);
  for (const [index, line] of lines.entries()) {
    const y = box.y + textSize * (face.cap + face.leading * index);
    setLine(into, line, { x, y }, style);
  }
}

/** Sets one line with its baseline at `at`. */
export function setLine(
  into: Container,
  line: TextLine,
  at: Point,
  { align = 'start', size: textSize = size.label, fill = ink }: TextStyle = {},
): void {
  const text = into.plain(line.text).attr({ x: mm(at.x), y: mm(at.y), 'font-size': textSize, fill });
  if (align !== 'start') text.attr({ 'text-anchor': align });
  if (line.bold) text.attr({ 'font-weight': 600 });
}

/** Breaks a text into lines no wider than `width` mm. */
export function wrapped(board: DrawingBoard, text: string, width: number, textSize: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && board.measure(longer, textSize) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
