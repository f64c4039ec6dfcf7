import { readFile } from 'node:fs/promises';
import { stringify } from 'yaml';

/** What can be started, and the file of `starters/` that it starts from: a complete one, valid as it is. */
const starters = {
  school: 'school.yaml',
  aircraft: 'aircraft.yaml',
  airfield: 'airfield.yaml',
  faults: 'faults.yaml',
  lesson: 'lesson.md',
} as const;

export type StarterKind = keyof typeof starters;

export interface StarterChanges {
  /** In place of the starter's own `name` or `title`. */
  readonly name?: string;
  /** Path or address of the JSON Schema by which an editor checks the file while it is typed. A lesson has none. */
  readonly schema?: string;
}

/** The text of a new file. */
export async function starter(kind: StarterKind, { name, schema }: StarterChanges = {}): Promise<string> {
  let text = await readFile(new URL(`starters/${starters[kind]}`, import.meta.url), 'utf8');
  // Functions as replacements: a `$` in a name then has no special meaning.
  if (schema !== undefined) {
    text = text.replace(/^# yaml-language-server: .*$/m, () => `# yaml-language-server: $schema=${schema}`);
  }
  if (name !== undefined) {
    const typed = stringify(name, { lineWidth: 0 }).trimEnd();
    text = text.replace(/^(name|title): .*$/m, (_, key: string) => `${key}: ${typed}`);
  }
  return text;
}
