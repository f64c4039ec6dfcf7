import { join } from 'node:path';
import { VFile } from 'vfile';
import { fail, hasErrors } from '../../messages/failures.ts';
import { type AircraftFile, parseAircraft } from '../../school/aircraft.ts';
import { type AirfieldFile, parseAirfield } from '../../school/airfield.ts';
import { type FaultsFile, parseFaults } from '../../school/faults.ts';
import type { ReadSchool } from '../../school/read.ts';
import { parseSchool, type School } from '../../school/school.ts';
import type { FileKind, SchoolFile } from '../api.ts';
import { type SchoolFiles, versionOf } from './school-files.ts';
import { schoolFile } from './school-paths.ts';
import { inFormOf } from './text-form.ts';

/** A school as it is on the disk, with unsaved texts in place of some files, in the form that `readSchool` gives. */
export interface LiveSchool extends Pick<ReadSchool, 'files' | 'withSoundAircraft'> {
  /** The files by their paths in the school. */
  readonly byPath: ReadonlyMap<string, VFile>;
}

/** How many are kept: the saved one, and those of the last changes. */
const most = 4;

/** Reads a school again and again; the same texts give the very same object, so that whatever depends on it is kept. */
export class LiveSchools {
  readonly #files: SchoolFiles;
  readonly #kept = new Map<string, LiveSchool>();
  readonly #parsed = new Map<string, { readonly key: string; readonly read: Parsed }>();

  constructor(files: SchoolFiles) {
    this.#files = files;
  }

  async read(unsaved: Readonly<Record<string, string>>, day: Date): Promise<LiveSchool> {
    const listed = (await this.#files.list()).files;
    const lessonIds = listed.filter(({ kind }) => kind === 'lesson').map(({ id }) => id);
    const read = withNew(listed, unsaved).map(async ({ path, kind, id }): Promise<Source[]> => {
      const text = await this.text(path, unsaved[path]);
      return text === undefined ? [] : [{ path, kind, id, text }];
    });
    const texts = (await Promise.all(read)).flat();
    const key = versionOf(JSON.stringify([day, lessonIds, texts]));
    const known = this.#kept.get(key);
    const school = known ?? this.#parse(texts, lessonIds, day);
    this.#kept.delete(key);
    this.#kept.set(key, school);
    for (const old of [...this.#kept.keys()].slice(0, -most)) this.#kept.delete(old);
    return school;
  }

  /** A text as it would be saved: the unsaved text in the form of the file; undefined where there is neither. */
  async text(path: string, unsaved: string | undefined): Promise<string | undefined> {
    const found = await this.#files.disk(path);
    return unsaved === undefined ? found?.text : inFormOf(found?.text ?? '', unsaved);
  }

  #parse(texts: readonly Source[], lessonIds: readonly string[], day: Date): LiveSchool {
    const read = <T>(kind: FileKind, parse: (file: VFile) => T | undefined): Map<string, Read<T>> =>
      new Map(
        texts
          .filter((each) => each.kind === kind)
          .map((source) => [source.id, this.#one(source, day, parse)]),
      );
    const fleet = read<AircraftFile>('aircraft', parseAircraft);
    const airfields = read<AirfieldFile>('airfield', (file) => parseAirfield(file, day));
    const faults = read<FaultsFile>('faults', parseFaults);
    const beside = {
      folder: this.#files.folder,
      fleet: sound(fleet),
      airfields: sound(airfields),
      faults: sound(faults),
      aircraftIds: [...fleet.keys()],
      airfieldIds: [...airfields.keys()],
      lessonIds,
    };
    const own = texts.find(({ kind }) => kind === 'school');
    const file = this.#fileOf('school.yaml', own?.text ?? '');
    let value: School | undefined;
    if (own) value = parseSchool(file, beside);
    else
      fail(
        file,
        'The school has no `school.yaml`: make one, or give its folder with `--school`',
        'missing-file',
      );
    const all = [...fleet.values(), ...airfields.values(), ...faults.values()];
    const byPath = new Map([['school.yaml', file], ...all.map((each) => [each.path, each.file] as const)]);
    const ofAircraft = new Set([...fleet.values()].map((each) => each.file));
    const files = [...byPath.values()];
    const stands = value && files.every((each) => ofAircraft.has(each) || !hasErrors(each));
    return stands ? { files, byPath, withSoundAircraft: value! } : { files, byPath };
  }

  /** A file whose text is the same is not read again. */
  #one<T>({ path, text }: Source, day: Date, parse: (file: VFile) => T | undefined): Read<T> {
    const key = versionOf(JSON.stringify([day, text]));
    const known = this.#parsed.get(path);
    if (known?.key === key) return known.read as Read<T>;
    const file = this.#fileOf(path, text);
    const value = parse(file);
    const read = { path, file, value };
    this.#parsed.set(path, { key, read });
    return read;
  }

  #fileOf(path: string, value: string): VFile {
    return new VFile({ path: join(this.#files.folder, path), value });
  }
}

/** The YAML files, with those that have never been saved. */
function withNew(listed: readonly SchoolFile[], unsaved: Readonly<Record<string, string>>): SchoolFile[] {
  const saved = new Set(listed.map(({ path }) => path));
  const others = Object.keys(unsaved).filter((path) => !saved.has(path));
  const files = [...listed, ...others.flatMap((path) => schoolFile(path) ?? [])];
  return files.filter(({ kind }) => kind !== 'lesson').sort((a, b) => (a.path < b.path ? -1 : 1));
}

interface Source {
  readonly path: string;
  readonly kind: FileKind;
  readonly id: string;
  readonly text: string;
}

interface Read<T> {
  readonly path: string;
  readonly file: VFile;
  readonly value: T | undefined;
}
type Parsed = Read<unknown>;

function sound<T>(all: ReadonlyMap<string, Read<T>>): Map<string, T> {
  const values = new Map<string, T>();
  for (const [id, { file, value }] of all) if (value !== undefined && !hasErrors(file)) values.set(id, value);
  return values;
}
