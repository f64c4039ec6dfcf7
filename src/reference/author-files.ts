import type { AuthorFile, AuthorLanguage } from './author-file.ts';
import { lessonLanguagePage } from './lesson-language-page.ts';
import { schemaFiles } from './schema-files.ts';
import { schoolFilesPage } from './school-files-page.ts';
import { snippetFile } from './snippets.ts';

/** Everything that helps an author type, made from the definitions that check what is typed. */
export function authorFiles(language: AuthorLanguage): AuthorFile[] {
  return [
    lessonLanguagePage(language),
    schoolFilesPage(language),
    ...schemaFiles(),
    snippetFile(language.groups.flatMap(({ components }) => components)),
  ];
}
