import type { Point, Position } from 'unist';

/** Where each line of a source starts. The last source is kept, because one with many mistakes is asked for many places. */
let last: { readonly source: string; readonly starts: readonly number[] } = { source: '', starts: [0] };

function lineStarts(source: string): readonly number[] {
  if (last.source !== source) {
    const starts = [0];
    for (const ending of source.matchAll(/\r\n|\n|\r/g)) starts.push(ending.index + ending[0].length);
    last = { source, starts };
  }
  return last.starts;
}

/** The point (line and column count from 1) of an offset into the lesson's source. */
export function pointAt(source: string, offset: number): Point {
  const starts = lineStarts(source);
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle;
  }
  return { line: low + 1, column: offset - starts[low]! + 1, offset };
}

/** The stretch of source between two offsets. */
export function spanAt(source: string, start: number, end: number): Position {
  return { start: pointAt(source, start), end: pointAt(source, end) };
}

/** The offset at which the line of `offset` ends, without its line ending. */
export function lineEndAt(source: string, offset: number): number {
  const end = source.slice(offset).search(/[\r\n]/);
  return end < 0 ? source.length : offset + end;
}
