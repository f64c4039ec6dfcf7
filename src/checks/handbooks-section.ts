import type { Element } from 'hast';
import { h } from 'hastscript';
import type { HandbooksFile } from '../school/handbooks.ts';
import { type Column, groupedTable } from './check-tables.ts';

/** What published handbooks teach, with the titles of the lessons that treat it. */
export interface HandbooksBeside {
  readonly table: HandbooksFile;
  /** By the names of the lessons' files. */
  readonly titles: ReadonlyMap<string, string>;
}

const columns: readonly Column[] = [
  { head: 'What the handbook teaches' },
  { head: 'Lesson' },
  { head: 'Under the heading, or why it is left out' },
];

/** One row for each element: which lesson treats it, or why none does. */
export function handbooksSection({ table, titles }: HandbooksBeside): Element[] {
  const groups = table.handbooks.map(({ title, read, elements }) => ({
    title: [title, ' · ', h('small', read)],
    lines: elements.map(({ element, lesson, under, 'left-out': why }) => ({
      cells:
        lesson === undefined
          ? [element, 'left out', why ?? '']
          : [element, titles.get(lesson) ?? lesson, under ?? ''],
    })),
  }));
  return [
    h('h2', table.name),
    h('p', handbooksWords),
    groupedTable('handbooks', columns, groups),
    h('p', { class: 'source' }, table.source),
  ];
}

const handbooksWords =
  'What the published handbooks teach of these approaches and landings, an element a row, and where the school’s lessons treat it. The facts are theirs, the words are not. Where a lesson leaves one out, the row says why.';
