import { readdir, readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { VFile } from 'vfile';
import { fail, hasErrors } from '../messages/failures.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import { type AircraftFile, parseAircraft } from './aircraft.ts';
import { type AirfieldFile, parseAirfield } from './airfield.ts';
import type { Checked } from './check-yaml.ts';
import { type FaultsFile, parseFaults } from './faults.ts';
import { type HandbooksFile, parseHandbooks } from './handbooks.ts';
import { parseSchool, type School } from './school.ts';
import { usualDay } from './variation.ts';

/** A file with its messages, and its value where none of them is an error. */
export interface ReadFile<T> {
  readonly file: VFile;
  readonly value?: T;
}

/** A school with the messages of every file it was read from. */
export interface ReadSchool {
  readonly files: readonly VFile[];
  readonly value?: School;
  /** Like `value`, but also there where only aircraft files have errors: those aircraft are not in its fleet. */
  readonly withSoundAircraft?: School;
}

/** Reads one aircraft file. A file that is not there is a message, not an exception. */
export async function readAircraft(path: string): Promise<ReadFile<AircraftFile>> {
  return read(path, 'aircraft', parseAircraft);
}

/**
 * Reads one airfield file. A file that is not there is a message, not an exception. `day` is the one for which magnetic
 * variation is worked out where the file has a position and no variation.
 */
export async function readAirfield(path: string, day: Date = usualDay): Promise<ReadFile<AirfieldFile>> {
  return read(path, 'airfield', (file) => parseAirfield(file, day));
}

/** Reads one file of faults. A file that is not there is a message, not an exception. */
async function readFaults(path: string): Promise<ReadFile<FaultsFile>> {
  return read(path, 'faults', parseFaults);
}

/**
 * Reads `school.yaml` and all of `fleet/`, `airfields/` and `faults/` beside it. Every file is checked, even after an
 * error in another; with one error anywhere there is no value. SI units and radians. Nothing is thrown: what cannot be read is
 * a message on its file. `day`: as for `readAirfield`.
 */
export async function readSchool(folder: string, day: Date = usualDay): Promise<ReadSchool> {
  const aircraft = await readAll(join(folder, 'fleet'), readAircraft);
  const airfields = await readAll(join(folder, 'airfields'), (path) => readAirfield(path, day));
  const faults = await readAll(join(folder, 'faults'), readFaults);
  const beside = {
    folder,
    fleet: values(aircraft),
    airfields: values(airfields),
    faults: values(faults),
    aircraftIds: [...aircraft.keys()],
    airfieldIds: [...airfields.keys()],
    lessonIds: await idsIn(folder, '.md'),
  };
  const school = await read(join(folder, 'school.yaml'), 'school', (file) => parseSchool(file, beside));
  const files = [school, ...aircraft.values(), ...airfields.values(), ...faults.values()].map(
    ({ file }) => file,
  );
  const ofAircraft = new Set([...aircraft.values()].map(({ file }) => file));
  const wrong = files.filter(hasErrors);
  if (!school.value || wrong.some((file) => !ofAircraft.has(file))) return { files };
  const withSoundAircraft = school.value;
  return wrong.length > 0
    ? { files, withSoundAircraft }
    : { files, withSoundAircraft, value: withSoundAircraft };
}

/** Reads `handbooks.yaml`, which a school need not have: undefined where there is none. */
export async function readHandbooks(folder: string): Promise<ReadFile<Checked<HandbooksFile>> | undefined> {
  const names = await readdir(folder).catch(() => [] as string[]);
  if (!names.includes('handbooks.yaml')) return undefined;
  return read(join(folder, 'handbooks.yaml'), 'handbooks', parseHandbooks);
}

async function read<T>(
  path: string,
  what: string,
  parse: (file: VFile) => T | undefined,
): Promise<ReadFile<T>> {
  const file = new VFile({ path });
  try {
    file.value = await readFile(path, 'utf8');
  } catch (error) {
    fail(file, await whyUnread(path, what, error as NodeJS.ErrnoException), 'missing-file');
    return { file };
  }
  const value = parse(file);
  return value === undefined ? { file } : { file, value };
}

async function whyUnread(path: string, what: string, error: NodeJS.ErrnoException): Promise<string> {
  if (error.code !== 'ENOENT' && error.code !== 'ENOTDIR')
    return `The ${what} file cannot be read (${error.code})`;
  const ids = await idsIn(dirname(path), '.yaml');
  const id = basename(path, '.yaml');
  const there = ids.length === 0 ? 'there is no YAML file in it' : `it holds: ${ids.join(', ')}`;
  return `There is no ${what} file \`${basename(path)}\` in the folder \`${dirname(path)}\`${didYouMean(id, ids)} (${there})`;
}

async function readAll<T>(
  folder: string,
  readOne: (path: string) => Promise<ReadFile<T>>,
): Promise<Map<string, ReadFile<T>>> {
  const found = new Map<string, ReadFile<T>>();
  for (const id of await idsIn(folder, '.yaml')) found.set(id, await readOne(join(folder, `${id}.yaml`)));
  return found;
}

function values<T>(all: ReadonlyMap<string, ReadFile<T>>): Map<string, T> {
  const sound = new Map<string, T>();
  for (const [id, { value }] of all) if (value !== undefined) sound.set(id, value);
  return sound;
}

/** File names without their ending, in alphabetical order; empty where there is no such folder. */
async function idsIn(folder: string, ending: string): Promise<string[]> {
  const names = await readdir(folder).catch(() => [] as string[]);
  return names
    .filter((name) => name.endsWith(ending) && !name.startsWith('.'))
    .map((name) => name.slice(0, -ending.length))
    .sort();
}
