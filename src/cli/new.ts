import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { Command } from 'commander';
import { fileId, spokenName } from '../school/file-id.ts';
import { type StarterKind, starter } from '../school/starter.ts';
import { packageFolder } from './package-folder.ts';

/** Exit codes of `chalkwing new`. */
const exitCodes = { started: 0, refused: 1 };

/** Why nothing was started, and what to do instead. */
class RefusedError extends Error {
  override readonly name = 'RefusedError';
}

interface NewFile {
  readonly path: string;
  readonly text: string;
}

/** Files to write, all or none, and what to tell the person who asked. */
interface Start {
  readonly files: readonly NewFile[];
  readonly next: string;
}

type Kind = 'lesson' | 'aircraft' | 'airfield';

/** Where files of each kind lie in a school, and what to do with a new one. */
const kinds: Readonly<
  Record<Kind, { ending: string; under: string; about: string; example: string; next: string }>
> = {
  lesson: {
    ending: '.md',
    under: '',
    about: 'a lesson, with every part of a lesson plan to fill in',
    example: 'Glide in the wind',
    next: 'Put in what you teach. To have it printed with the others, add `ID` to `chapters` under `handbook` in SCHOOL.',
  },
  aircraft: {
    ending: '.yaml',
    under: 'fleet',
    about: 'an aircraft file, with invented figures to replace',
    example: 'Osier 15',
    next:
      "Its figures are invented: replace every one from the aircraft's own handbook, or from measurements, before anyone " +
      'flies by them. To have lessons printed for it, add `ID` to `aircraft` under `handbook` in SCHOOL.',
  },
  airfield: {
    ending: '.yaml',
    under: 'airfields',
    about: 'an airfield file, with invented runways to replace',
    example: 'Fallow Reach',
    next:
      "Its runways and obstacles are invented: replace them from the airfield's own guide. To teach there, name it `ID` " +
      'under `defaults` in SCHOOL, with one of its runways.',
  },
};

/** `chalkwing new`: files to begin with. Never writes over an existing file. */
export function newCommand(): Command {
  const command = new Command('new').description(
    'Start a lesson, an aircraft, an airfield or a whole school: files to fill in',
  );
  for (const kind of Object.keys(kinds) as Kind[]) {
    const { about, example } = kinds[kind];
    command
      .command(kind)
      .description(`Start ${about}`)
      .argument(
        '<name>',
        `what it is called, such as "${example}" (the file is then ${fileId(example)}${kinds[kind].ending})`,
      )
      .option('--school <folder>', 'folder that holds school.yaml', 'lessons')
      .exitOverride()
      .action((name: string, { school }: { school: string }) => run(() => startOne(kind, name, school)));
  }
  command
    .command('school')
    .description('Start a whole school: an aircraft, an airfield, faults and a lesson, which build at once')
    .argument('<folder>', 'where it goes; the other commands look in `lessons` where no --school is given')
    .exitOverride()
    .action((folder: string) => run(() => startSchool(folder)));
  return command;
}

async function run(start: () => Promise<Start>): Promise<void> {
  try {
    const { files, next } = await start();
    await writeNew(files);
    process.stdout.write(`${files.map(({ path }) => `${path}\n`).join('')}${next}\n`);
    process.exitCode = exitCodes.started;
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    process.stderr.write(`${error.message}\n`);
    process.exitCode = exitCodes.refused;
  }
}

async function startOne(kind: Kind, typed: string, school: string): Promise<Start> {
  const { ending, under, next, example } = kinds[kind];
  const id = fileId(typed);
  if (id === '') {
    throw new RefusedError(
      `\`${typed}\` gives no name for a file: use letters or digits, such as \`${example}\``,
    );
  }
  const settings = join(school, 'school.yaml');
  if (!existsSync(settings)) {
    throw new RefusedError(
      `There is no ${settings}: name the school's folder with \`--school\`, or start a school with \`chalkwing new school ${quoted(school)}\``,
    );
  }
  const path = join(school, under, `${id}${ending}`);
  const name = spokenName(typed);
  const words = next.replace('ID', id).replace('SCHOOL', settings);
  if (kind === 'lesson') {
    return {
      files: [{ path, text: await starter(kind, { name }) }],
      next: `${words}\nWhat is still wrong with it: chalkwing check ${id} --school ${quoted(school)}`,
    };
  }
  const there = nearestSchema(kind, school);
  const schema = there ?? join(school, 'schemas', schemaName(kind));
  const file = { path, text: await starter(kind, { name, schema: linkFrom(path, schema) }) };
  return { files: there ? [file] : [file, await schemaFile(kind, schema)], next: words };
}

/** The files of a new school by kind; the ids are those that its own files use. */
const schoolFiles: readonly (readonly [Exclude<StarterKind, 'lesson'>, string])[] = [
  ['school', 'school.yaml'],
  ['aircraft', join('fleet', 'crack-willow-12.yaml')],
  ['airfield', join('airfields', 'withy-bed.yaml')],
  ['faults', join('faults', 'approach-faults.yaml')],
];

async function startSchool(folder: string): Promise<Start> {
  const files: NewFile[] = [];
  for (const [kind, place] of schoolFiles) {
    const path = join(folder, place);
    const schema = join(folder, 'schemas', schemaName(kind));
    files.push({ path, text: await starter(kind, { schema: linkFrom(path, schema) }) });
    files.push(await schemaFile(kind, schema));
  }
  files.push({ path: join(folder, 'first-lesson.md'), text: await starter('lesson') });
  const next =
    'All of it is invented: replace it from your own handbooks before anyone flies by it. Then:\n' +
    `  chalkwing check --school ${quoted(folder)}\n  chalkwing build --school ${quoted(folder)}`;
  return { files, next };
}

const schemaName = (kind: StarterKind) => `${kind}.schema.json`;

/**
 * A school carries its schemas with it: any editor that understands the first line of the files then finds them
 * without a network, wherever the school is copied and however Chalkwing was installed.
 */
async function schemaFile(kind: StarterKind, path: string): Promise<NewFile> {
  return { path, text: await readFile(join(packageFolder, 'schemas', schemaName(kind)), 'utf8') };
}

/** The school's own schema, or the one in a folder above that several schools share. */
function nearestSchema(kind: StarterKind, school: string): string | undefined {
  for (let folder = resolve(school); ; folder = dirname(folder)) {
    const path = join(folder, 'schemas', schemaName(kind));
    if (existsSync(path)) return path;
    if (dirname(folder) === folder) return undefined;
  }
}

function linkFrom(file: string, schema: string): string {
  return relative(dirname(resolve(file)), resolve(schema))
    .split(sep)
    .join('/');
}

async function writeNew(files: readonly NewFile[]): Promise<void> {
  const taken = files.filter(({ path }) => existsSync(path)).map(({ path }) => path);
  if (taken.length > 0) throw alreadyThere(taken);
  for (const { path, text } of files) {
    try {
      await mkdir(dirname(path), { recursive: true });
      // `wx`: a file that has appeared in the meantime is not written over either.
      await writeFile(path, text, { flag: 'wx' });
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === undefined) throw error;
      if (code === 'EEXIST' && existsSync(path)) throw alreadyThere([path]);
      throw new RefusedError(`${path} cannot be written (${code}): is there a folder that you may write to?`);
    }
  }
}

function alreadyThere(paths: readonly string[]): RefusedError {
  const them = paths.length === 1 ? 'it' : 'them';
  return new RefusedError(
    `Already there, and left as ${paths.length === 1 ? 'it is' : 'they are'}: ${paths.join(', ')}. Choose another name, or move ${them} away first; nothing was written`,
  );
}

function quoted(folder: string): string {
  return /\s/.test(folder) ? `"${folder}"` : folder;
}
