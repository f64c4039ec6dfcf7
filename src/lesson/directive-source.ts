/** Where the parts of a directive are in the lesson's source (offsets), for messages that point at the part. */
export interface DirectiveSource {
  readonly name: Span;
  /** The text between the brackets. */
  readonly label?: Span;
  readonly attributes: readonly AttributeSource[];
  /** What follows the directive on its line, where braces or brackets were opened and could not be read. */
  readonly unread?: '[' | '{';
}

interface Span {
  readonly start: number;
  readonly end: number;
}

interface AttributeSource extends Span {
  readonly name: string;
}

/** Reads the parts of the directive that the parser found from `start` to `end` (of its first line, for a container). */
export function locateDirective(source: string, start: number, end: number): DirectiveSource {
  const nameStart = start + (/^:+/.exec(source.slice(start, end))?.[0].length ?? 0);
  const nameEnd =
    nameStart + (/^[\p{Letter}\p{Number}_-]+/u.exec(source.slice(nameStart, end))?.[0].length ?? 0);
  const name = { start: nameStart, end: nameEnd };
  const next = source[nameEnd];
  const label = next === '[' && nameEnd < end ? bracketed(source, nameEnd, end) : undefined;
  if (next === '[' && !label) return { name, attributes: [], unread: '[' };
  const afterLabel = label ? label.end + 1 : nameEnd;
  const parts = label ? { name, label } : { name };
  if (source[afterLabel] !== '{') return { ...parts, attributes: [] };
  if (afterLabel >= end) return { ...parts, attributes: [], unread: '{' };
  return { ...parts, attributes: attributesFrom(source, afterLabel + 1, end) };
}

/** The span inside the balanced brackets that open at `open`. */
function bracketed(source: string, open: number, end: number): Span | undefined {
  let depth = 0;
  for (let at = open; at < end; at += 1) {
    const character = source[at];
    if (character === '\\') at += 1;
    else if (character === '[') depth += 1;
    else if (character === ']') {
      depth -= 1;
      if (depth === 0) return { start: open + 1, end: at };
    }
  }
  return undefined;
}

const attribute = /([#.][^\s#.}]+)|([\p{Letter}\p{Number}_:.-]+)(?:\s*=\s*(?:"[^"]*"|'[^']*'|[^\s"'}]+))?/uy;
const filler = /[^\S\n]*\n?[^\S\n]*/y;

function attributesFrom(source: string, start: number, end: number): AttributeSource[] {
  const found: AttributeSource[] = [];
  let at = start;
  while (at < end) {
    filler.lastIndex = at;
    at += filler.exec(source)?.[0].length ?? 0;
    attribute.lastIndex = at;
    const match = attribute.exec(source);
    if (!match) break;
    const shortcut = match[1]?.startsWith('#') ? 'id' : 'class';
    found.push({ name: match[2] ?? shortcut, start: at, end: at + match[0].length });
    at += match[0].length;
  }
  return found;
}
