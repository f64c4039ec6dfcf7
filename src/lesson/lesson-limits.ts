import type { Nodes, Root } from 'mdast';
import type { Point, Position } from 'unist';
import { pointAt } from '../messages/source-place.ts';

// How large a lesson may be. Each limit is many times what a printed lesson needs, and small enough that the parser,
// whose time grows with the square of some of these, is done in seconds whatever was typed.

const longest = { lesson: 100_000, line: 5_000, paragraph: 20_000 };
const deepest = 50;
const mostListMarks = 3_000;

/** A lesson that is not read at all, and why. */
export interface Refusal {
  readonly reason: string;
  readonly place: Point | Position | undefined;
}

/** What in the source is too much for the parser; undefined where nothing is. Lengths are in characters. */
export function tooMuch(source: string): Refusal | undefined {
  if (source.length > longest.lesson) {
    const reason = `This lesson has ${source.length} characters, more than the ${longest.lesson} that one may have: split it into several`;
    return { reason, place: pointAt(source.slice(0, longest.lesson + 1), longest.lesson) };
  }
  const refuse = (offset: number, reason: string): Refusal => ({ reason, place: pointAt(source, offset) });
  let paragraph = 0;
  let listMarks = 0;
  let openContainers: number[] = [];
  for (const { 1: line = '', index } of source.matchAll(/([^\r\n]*)(?:\r\n|\n|\r|$)/g)) {
    if (line.trim() === '') {
      paragraph = 0;
      continue;
    }
    if (line.length > longest.line) {
      const reason = `This line is ${line.length} characters long, more than the ${longest.line} that one may have: break it`;
      return refuse(index + longest.line, reason);
    }
    paragraph += line.length + 1;
    if (paragraph > longest.paragraph) {
      const reason = `Here are more than ${longest.paragraph} characters without a blank line: put blank lines between paragraphs`;
      return refuse(index, reason);
    }
    const { lists, quotes, end } = blockMarks(line);
    listMarks += lists;
    if (listMarks > mostListMarks) {
      return refuse(index, `This lesson has more than ${mostListMarks} list items: split it into several`);
    }
    const fence = /^:{3,}/.exec(line.slice(end))?.[0].length ?? 0;
    if (fence > deepest || lists + quotes > deepest) return refuse(index, nestedReason);
    if (fence === 0) continue;
    if (/^:+\s*$/.test(line.slice(end))) {
      // Any container closes those that opened inside it.
      const closed = openContainers.findIndex((each) => each <= fence);
      if (closed >= 0) openContainers = openContainers.slice(0, closed);
    } else openContainers.push(fence);
    if (openContainers.length > deepest) return refuse(index, nestedReason);
  }
  return undefined;
}

const nestedReason = `Here quotes, lists, brackets or \`:::\` blocks stand more than ${deepest} deep inside each other: close some, or take some out`;

/** The first piece of the tree that is too deep for the tree to be walked. */
export function tooDeep(tree: Root): Refusal | undefined {
  // A list of what is still to be looked at: a deep tree would break recursion.
  let level: Nodes[] = [tree];
  // An item, its list and its paragraph: three levels of the tree for one of the author's.
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > 3 * deepest) return { reason: nestedReason, place: level[0]?.position };
    level = level.flatMap((node): Nodes[] => ('children' in node ? node.children : []));
  }
  return undefined;
}

/** Counts the marks of quotes and lists at the start of a line. */
function blockMarks(line: string): { lists: number; quotes: number; end: number } {
  const mark = /[ \t]*(?:(>)|(?:[-*+]|\d{1,9}[.)])(?=[ \t]|$))/y;
  let lists = 0;
  let quotes = 0;
  let end = 0;
  for (let found = mark.exec(line); found; found = mark.exec(line)) {
    if (found[1]) quotes += 1;
    else lists += 1;
    end = mark.lastIndex;
  }
  return { lists, quotes, end: end + (/^[ \t]*/.exec(line.slice(end))?.[0].length ?? 0) };
}
