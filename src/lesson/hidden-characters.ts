import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import { fail } from '../messages/failures.ts';
import { whyHidden } from '../messages/hidden-character.ts';
import { spanAt } from '../messages/source-place.ts';

/**
 * Reports characters that cannot be seen but change what is read: one message for each kind, at its first place. A
 * character reference (`&#x202E;`) counts as well; the front matter is checked as YAML is.
 */
export function checkHiddenCharacters(tree: Root, file: VFile): void {
  const source = String(file);
  const first = tree.children[0];
  const from = first?.type === 'yaml' ? (first.position?.end.offset ?? 0) : 0;
  const found = new Map<string, { start: number; end: number; count: number }>();
  const note = (character: string, start: number, end: number) => {
    if (whyHidden(character) === undefined) return;
    const known = found.get(character);
    if (known) known.count += 1;
    else found.set(character, { start, end, count: 1 });
  };
  for (let at = from; at < source.length; at += 1) {
    const character = String.fromCodePoint(source.codePointAt(at)!);
    note(character, at, at + character.length);
    at += character.length - 1;
  }
  for (const { 0: written, 1: hex, 2: decimal, index } of references(tree, source, from)) {
    const point = hex ? Number.parseInt(hex, 16) : Number(decimal);
    if (point <= 0x10ffff) note(String.fromCodePoint(point), index, index + written.length);
  }
  for (const [character, { start, end, count }] of found) {
    const more = count > 1 ? ` (${count} times in this lesson)` : '';
    fail(file, `${whyHidden(character)}${more}`, 'hidden-character', spanAt(source, start, end));
  }
}

/** Numeric character references outside code, where something that looks like one is one. */
function* references(
  tree: Root,
  source: string,
  from: number,
): Generator<RegExpMatchArray & { index: number }> {
  const verbatim: [number, number][] = [];
  visit(tree, ['code', 'inlineCode', 'html'], ({ position }) => {
    verbatim.push([position?.start.offset ?? 0, position?.end.offset ?? 0]);
  });
  let next = 0;
  for (const match of source.matchAll(/&#(?:x([\da-f]{1,6})|(\d{1,7}));/gi)) {
    while (next < verbatim.length && verbatim[next]![1] <= match.index) next += 1;
    const inside = next < verbatim.length && verbatim[next]![0] <= match.index;
    if (match.index >= from && !inside) yield match;
  }
}
