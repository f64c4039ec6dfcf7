import { jsonSchemaOf } from '../school/json-schema.ts';
import type { AuthorFile } from './author-file.ts';
import { lessonHead, schoolFiles } from './definitions.ts';

/** A JSON Schema of each kind of file, so that an editor completes and checks while an author types. */
export function schemaFiles(): AuthorFile[] {
  return Object.entries({ ...schoolFiles, lesson: lessonHead }).map(
    ([name, { title, about, definition }]) => ({
      path: `schemas/${name}.schema.json`,
      content: `${JSON.stringify(jsonSchemaOf(definition, { title, description: `${about}.` }), null, 2)}\n`,
    }),
  );
}
