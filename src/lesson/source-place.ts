import type { Point, Position } from 'unist';

/** The point (line and column count from 1) of an offset into the lesson's source. */
export function pointAt(source: string, offset: number): Point {
  const before = source.slice(0, offset);
  return { line: before.split('\n').length, column: offset - before.lastIndexOf('\n'), offset };
}

/** The stretch of source from one offset to another. */
export function spanAt(source: string, start: number, end: number): Position {
  return { start: pointAt(source, start), end: pointAt(source, end) };
}

/** The offset at which the line of `offset` ends, its line ending not counted. */
export function lineEndAt(source: string, offset: number): number {
  const end = source.slice(offset).search(/\r?\n/);
  return end < 0 ? source.length : offset + end;
}
