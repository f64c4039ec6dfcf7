import { execFile } from 'node:child_process';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The day on every packet of these tests. */
export const day = '2031-05-06';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A copy of the demonstration lessons in a folder of its own, worked on with the real command. */
export interface TrialSchool {
  readonly folder: string;
  /** Runs `chalkwing` in the folder, as an instructor would. */
  readonly run: (args: readonly string[], environment?: Readonly<Record<string, string>>) => Promise<Ran>;
  /** `chalkwing build`, dated `day`. */
  readonly build: (args: readonly string[], environment?: Readonly<Record<string, string>>) => Promise<Ran>;
  /** `chalkwing build` with no browser to be found: HTML and text alone, in a second instead of four. */
  readonly buildHtml: (args: readonly string[]) => Promise<Ran>;
  readonly write: (path: string, content: string) => Promise<void>;
  readonly read: (path: string) => Promise<Buffer>;
  readonly text: (path: string) => Promise<string>;
  /** Puts `to` in place of `from`, which must be in the file exactly once. */
  readonly edit: (path: string, from: string, to: string) => Promise<void>;
  /** Every file under `dist`, hidden ones too, sorted. */
  readonly built: () => Promise<string[]>;
  readonly remove: () => Promise<void>;
}

export async function openTrialSchool(): Promise<TrialSchool> {
  const folder = await mkdtemp(join(tmpdir(), 'chalkwing-packet-'));
  await cp(join(root, 'lessons'), join(folder, 'lessons'), { recursive: true });
  const run: TrialSchool['run'] = (args, environment = {}) =>
    new Promise((resolve) => {
      execFile(
        process.execPath,
        [join(root, 'src/cli/chalkwing.js'), ...args],
        { cwd: folder, env: { ...process.env, ...environment }, maxBuffer: 1 << 26 },
        (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
      );
    });
  const build: TrialSchool['build'] = (args, environment) =>
    run(['build', ...args, '--date', day], environment);
  const text = (path: string) => readFile(join(folder, path), 'utf8');
  const write = (path: string, content: string) => writeFile(join(folder, path), content);
  return {
    folder,
    run,
    build,
    buildHtml: (args) => build([...args, '--browser', join(folder, 'no-browser')]),
    write,
    read: (path) => readFile(join(folder, path)),
    text,
    edit: async (path, from, to) => {
      const parts = (await text(path)).split(from);
      if (parts.length !== 2) throw new Error(`${path} has \`${from}\` ${parts.length - 1} times`);
      await write(path, parts.join(to));
    },
    built: async () => {
      const entries = await readdir(join(folder, 'dist'), { recursive: true, withFileTypes: true });
      return (
        entries
          .filter((entry) => entry.isFile())
          .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
          // What a build remembers about itself.
          .filter((path) => !path.includes('/.printed/'))
          .sort()
      );
    },
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

/** A lesson: front matter, and words under it. The first line of the words is line 6 where there are no `settings`. */
export function lessonOf(words: string, settings: readonly string[] = []): string {
  return ['---', 'title: A trial lesson', 'approach: "180"', ...settings, '---', '', words, ''].join('\n');
}

/** The words of HTML as a reader sees them: no tags, plain spaces and straight quotes, one space between words. */
export function wordsOf(html: string): string {
  return plain(
    html
      .replace(/<(style|script|svg)\b[\s\S]*?<\/\1>/g, ' ')
      .replace(/<\/(p|li|h\d|td|th|dt|dd|tr|caption|figcaption)>/g, ' ')
      .replace(/<[^>]*>/g, '')
      .replace(/&#x([\da-f]+);/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&amp;', '&'),
  );
}

/** No-break spaces as plain ones, curled quotes as straight ones. */
export function plain(text: string): string {
  return text
    .replace(/[“”]/g, '"')
    .replace(/[‘’]/g, "'")
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .trim();
}

/** The rows of the first table whose tag or caption matches, as the words of their cells; without head and caption. */
export function tableRows(html: string, which: RegExp): string[][] {
  const table = [...html.matchAll(/<table[\s\S]*?<\/table>/g)]
    .map(([found]) => found)
    .find((found) => which.test(found));
  if (!table) throw new Error(`There is no table ${which} in the page`);
  return [...table.matchAll(/<tbody>([\s\S]*?)<\/tbody>/g)].flatMap(([, body]) =>
    [...body!.matchAll(/<tr>([\s\S]*?)<\/tr>/g)].map(([, row]) =>
      [...row!.matchAll(/<t[hd][^>]*>([\s\S]*?)<\/t[hd]>/g)].map(([, cell]) => wordsOf(cell!)),
    ),
  );
}

/** The fingerprint of the inputs on a packet. */
export function fingerprintOf(html: string): string {
  const found = new Set([...wordsOf(html).matchAll(/inputs ([\da-f]{8})\b/g)].map(([, mark]) => mark!));
  if (found.size !== 1) throw new Error(`The page bears ${found.size} fingerprints`);
  return [...found][0]!;
}
