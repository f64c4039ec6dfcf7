import type { Component, Form } from './component.ts';

export const colonsOf: Readonly<Record<Form, string>> = { text: ':', leaf: '::', container: ':::' };

type Named = Pick<Component<never>, 'name' | 'form'>;

/** The directive as it must be typed, in its shortest form: `:key[…]`, `::pattern`, `:::objective … :::`. */
export function rightForm({ name, form }: Named): string {
  if (form === 'text') return `\`:${name}[…]\` in a sentence`;
  if (form === 'leaf') return `\`::${name}\` on a line of its own`;
  return `\`:::${name}\` on a line of its own, the text below it, and \`:::\` on a line at its end`;
}

/** `` `a`, `b` or `c` ``. */
export function nameList(names: readonly string[]): string {
  const quoted = names.map((name) => `\`${name}\``);
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} or ${quoted.at(-1)}`;
}
