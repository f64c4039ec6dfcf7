import type { VFile } from 'vfile';
import type { z } from 'zod';
import { type Checked, checkYaml } from './check-yaml.ts';
import { list, section, words } from './fields.ts';

const element = section(
  {
    element: words('Go-around').describe('What the handbook teaches, in a few words of your own'),
    lesson: words('faulty-approaches')
      .describe('The lesson that treats it: the name of its file without `.md`')
      .optional(),
    under: words('Going around').describe('The heading in that lesson under which it stands').optional(),
    'left-out': words('Belongs to the lessons on take-off.').describe('Why no lesson treats it').optional(),
  },
  '{ element: Go-around, lesson: faulty-approaches, under: Going around }',
).refine((row) => (row.lesson !== undefined && row.under !== undefined) !== (row['left-out'] !== undefined), {
  error:
    'say where it is treated, with `lesson` and `under`, or why it is not, with `left-out`: one of the two',
  params: { rule: 'cross-check' },
});

/** What the file `handbooks.yaml` may hold. */
export const handbooks = section(
  {
    name: words('Handbooks beside the lessons').describe('Title of the table'),
    source: words('who compared them, and when').describe('Who answers for the comparison'),
    handbooks: list(
      section(
        {
          title: words('Airplane Flying Handbook, FAA-H-8083-3C, chapter 9').describe(
            'The published document and its part',
          ),
          read: words('from memory').describe('Whether it was read, or recalled'),
          elements: list(element, '[{ element: Go-around, ... }]', 1).describe('What it teaches, a row each'),
        },
        '{ title: ..., read: from memory, elements: [...] }',
      ),
      '[{ title: ..., read: from memory, elements: [...] }]',
      1,
    ).describe('The documents'),
  },
  '{ name: Handbooks beside the lessons, ... }',
);

/** What published handbooks teach, element by element, and which lesson treats it. */
export type HandbooksFile = z.output<typeof handbooks>;

/**
 * Reads the file; messages land on it, and where one is an error the result has no value. Undefined where it is not
 * YAML.
 */
export function parseHandbooks(file: VFile): Checked<HandbooksFile> | undefined {
  return checkYaml<HandbooksFile>(file, handbooks);
}
