import { describeSchema } from '../school/json-schema.ts';
import type { AuthorFile, AuthorLanguage } from './author-file.ts';
import { schoolFiles } from './definitions.ts';
import { flyWordsSection } from './fly-words.ts';
import { keyTable } from './key-table.ts';
import { page, table } from './markdown.ts';
import { quantityTable, quantityWords } from './quantity-table.ts';

/** The reference of the YAML files of a school. */
export function schoolFilesPage({ flyWords }: Pick<AuthorLanguage, 'flyWords'>): AuthorFile {
  const content = page([
    '# The files of a school',
    'Beside the lessons stand a few files of keys and values (YAML): the school, its aircraft, its airfields, its tables of faults. A key stands before a colon; the keys of a section are indented below it, or stand in braces on the same line; a list has a `-` before each item, or brackets around all. Words that hold a colon, and names that are numbers, are put in quotes. A key that is not listed here is a mistake, and `chalkwing check` names the nearest one that is.',
    'In the tables, `speeds` › `stall` is the key `stall` in the section `speeds`.',
    ...Object.entries(schoolFiles).flatMap(([name, { title, about, definition }]) => [
      `## ${title}`,
      `${about}.`,
      keyTable(describeSchema(definition)),
      ...(name === 'faults' ? flyWordsSection(flyWords) : []),
    ]),
    '## Quantities and their units',
    quantityWords,
    quantityTable(),
    '## Help while you type',
    'An editor that knows JSON Schema completes the keys, explains them and marks mistakes while you type, once it is told which schema belongs to which files:',
    table(
      ['Files', 'Schema'],
      [
        ['`fleet/*.yaml`', '`schemas/aircraft.schema.json`'],
        ['`airfields/*.yaml`', '`schemas/airfield.schema.json`'],
        ['`faults/*.yaml`', '`schemas/faults.schema.json`'],
        ['`handbooks.yaml`', '`schemas/handbooks.schema.json`'],
        ['`school.yaml`', '`schemas/school.schema.json`'],
        ['the head of a lesson', '`schemas/lesson.schema.json`'],
      ],
    ),
    'A schema knows keys, units and what is needed. It does not know the ranges of quantities, nor whether two values fit together: that is for `chalkwing check`. `schemas/lesson.code-snippets.json` holds every directive as a snippet. `chalkwing reference` writes all of these, and the reference pages, into a folder of yours.',
  ]);
  return { path: 'docs/school-files.md', content };
}
