/** A stretch of one line, columns counted from 1; `end` is the column after it. */
export interface FramePlace {
  readonly line: number;
  readonly column: number;
  readonly end: number;
}

/** Longer lines are cut around the place. */
const longest = 100;

/**
 * The source line with its number, and carets under the place:
 *
 *     12 | At :kye[final] now.
 *        |    ^^^^
 *
 * Nothing where the source has no such line.
 */
export function codeFrame(source: string, { line, column, end }: FramePlace): string[] {
  const text = source.split(/\r\n|\r|\n/)[line - 1]?.replaceAll('\t', ' ');
  if (text === undefined) return [];
  const from = Math.max(0, Math.min(column - 1, text.length));
  const start = text.length <= longest ? 0 : Math.max(0, Math.min(from - 30, text.length - longest));
  const cut = text.slice(start, start + longest);
  const [before, after] = [start > 0 ? '… ' : '', start + longest < text.length ? ' …' : ''];
  const width = Math.max(1, Math.min(end - 1, start + longest, Math.max(text.length, 1)) - from);
  const number = String(line);
  const blank = ' '.repeat(number.length);
  return [
    `${number} | ${before}${cut}${after}`.trimEnd(),
    `${blank} | ${' '.repeat(before.length + from - start)}${'^'.repeat(width)}`,
  ];
}
