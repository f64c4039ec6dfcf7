import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';

export interface Column {
  readonly head: string;
  readonly number?: true;
}

/** Lines of a table that belong together, under a heading line of their own. */
export interface LineGroup {
  readonly title: readonly (string | Element)[];
  readonly lines: readonly TableLine[];
}

/** Cells, and what is printed below them across the whole width. */
export interface TableLine {
  readonly cells: readonly string[];
  readonly note?: string | undefined;
}

/** A table of groups; its head is repeated on every page that it reaches. `kind` names its column widths. */
export function groupedTable(
  kind: string,
  columns: readonly Column[],
  groups: readonly LineGroup[],
): Element {
  const cell = (content: string, i: number): Element =>
    h('td', columns[i]?.number ? { class: 'number' } : {}, content);
  const line = ({ cells, note }: TableLine): ElementContent[] => [
    h('tr', note ? { class: 'noted' } : {}, cells.map(cell)),
    ...(note ? [h('tr', { class: 'of-line' }, [h('td', { colSpan: columns.length }, note)])] : []),
  ];
  return h('table', { class: `checks ${kind}` }, [
    h('thead', [
      h(
        'tr',
        columns.map(({ head, number }) =>
          h('th', { scope: 'col', ...(number && { class: 'number' }) }, head),
        ),
      ),
    ]),
    ...groups.map(({ title, lines }) =>
      h('tbody', [
        h('tr', { class: 'group' }, [h('th', { scope: 'rowgroup', colSpan: columns.length }, [...title])]),
        ...lines.flatMap(line),
      ]),
    ),
  ]);
}

/** Things with the same key together, in the order in which the keys first appear. */
export function groupBy<T>(things: readonly T[], keyOf: (thing: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const thing of things) groups.set(keyOf(thing), [...(groups.get(keyOf(thing)) ?? []), thing]);
  return [...groups];
}
