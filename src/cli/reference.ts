import { join } from 'node:path';
import { Command } from 'commander';
import { groups } from '../../components/list.ts';
import { writeWhole } from '../press/printing/write-whole.ts';
import { authorFiles } from '../reference/author-files.ts';
import { flyWords } from '../reference/fly-words.ts';

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
