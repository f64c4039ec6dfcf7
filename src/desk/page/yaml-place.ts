import type { Text } from '@codemirror/state';

/** The keys above a place, from the outside in, and those that its section has already. */
export interface KeyPlace {
  readonly path: readonly string[];
  readonly used: ReadonlySet<string>;
}

/** Reads it from the indentation, as a person does: the text is being typed, and is not YAML yet. */
export function keyPlace(doc: Text, position: number): KeyPlace {
  const here = doc.lineAt(position);
  let indent = indentOf(here.text);
  const path: string[] = [];
  const used = new Set<string>();
  const note = (text: string) => {
    const key = keyOf(text);
    if (key !== undefined && path.length === 0) used.add(key);
  };
  let isOtherItem = isItem(here.text);
  for (let number = here.number - 1; number >= 1; number -= 1) {
    const { text } = doc.line(number);
    if (text.trim() === '---') break;
    if (text.trim() === '' || text.trimStart().startsWith('#')) continue;
    const depth = indentOf(text);
    if (depth < indent) {
      const key = keyOf(text);
      if (key === undefined) continue;
      path.unshift(key);
      indent = Math.min(depth, startOf(text));
      isOtherItem = true;
    } else if (depth === indent && !isOtherItem) {
      note(text);
      // The keys of the item before do not belong to this one; a list is indented deeper than its key, or as deep.
      if (isItem(text)) {
        isOtherItem = true;
        indent = startOf(text) + 1;
      }
    }
  }
  let isThisItem = true;
  for (let number = here.number + 1; number <= doc.lines && isThisItem; number += 1) {
    const { text } = doc.line(number);
    if (text.trim() === '---') break;
    if (text.trim() === '') continue;
    if (indentOf(text) < indentOf(here.text) || isItem(text)) isThisItem = false;
    else if (indentOf(text) === indentOf(here.text)) used.add(keyOf(text) ?? '');
  }
  return { path, used };
}

const isItem = (text: string) => /^\s*- /.test(text);
/** Where its key begins: after the dash of an item. */
const indentOf = (text: string) => /^\s*(?:- )?/.exec(text)![0].length;
const startOf = (text: string) => /^\s*/.exec(text)![0].length;
const keyOf = (text: string) => /^\s*(?:- )?([\w-]+):/.exec(text)?.[1];
