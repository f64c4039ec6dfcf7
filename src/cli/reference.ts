import { join } from 'node:path';
import { Command } from 'commander';
import { groups } from '../../components/list.ts';
import { authorFiles } from '../press/reference/author-files.ts';
import { flyWords } from '../press/reference/fly-words.ts';
import { writeWhole } from '../press/write-whole.ts';

/** `chalkwing reference`: the reference pages, the editor's schemas and its snippets, written beside a school's lessons. */
export function referenceCommand(): Command {
  return new Command('reference')
    .description("Write the author's reference pages, and the schemas and snippets for an editor")
    .argument('[folder]', 'where `docs/` and `schemas/` go', '.')
    .action(async (folder: string) => {
      for (const { path, content } of authorFiles({ groups, flyWords })) {
        const file = join(folder, path);
        await writeWhole(file, content);
        process.stdout.write(`${file}\n`);
      }
    });
}
