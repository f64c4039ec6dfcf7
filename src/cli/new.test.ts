import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readSchool } from '../school/read.ts';
import { check } from './check.ts';
import { newCommand } from './new.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-new-'));
});
afterEach(async () => {
  vi.restoreAllMocks();
  process.exitCode = undefined;
  await rm(folder, { recursive: true, force: true });
});

async function run(...typed: readonly string[]): Promise<{ code: unknown; out: string; err: string }> {
  const said = { out: '', err: '' };
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    said.out += text;
    return true;
  });
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
    said.err += text;
    return true;
  });
  process.exitCode = undefined;
  await newCommand().parseAsync(typed, { from: 'user' });
  vi.restoreAllMocks();
  const code = process.exitCode;
  process.exitCode = undefined;
  return { code, ...said };
}

const messagesOf = async (school: string) =>
  (await check(school, [])).flatMap(({ path, messages }) =>
    messages.map(({ reason }) => `${path}: ${reason}`),
  );

async function filesIn(path: string): Promise<string[]> {
  const found = await readdir(path, { recursive: true, withFileTypes: true });
  return found.filter((each) => each.isFile()).map((each) => join(each.parentPath, each.name));
}

describe('chalkwing new school', () => {
  it('starts a school of which nothing is wrong or missing', async () => {
    const school = join(folder, 'school');
    const { code, out } = await run('school', school);
    expect(code).toBe(0);
    expect(out.split('\n')).toContain(join(school, 'school.yaml'));
    expect(await messagesOf(school)).toEqual([]);
    expect((await readSchool(school)).value?.handbook?.chapters).toEqual(['first-lesson']);
  });

  it('carries a schema for each YAML file, where its first line says', async () => {
    const school = join(folder, 'school');
    await run('school', school);
    const yaml = (await filesIn(school)).filter((path) => path.endsWith('.yaml'));
    expect(yaml).toHaveLength(4);
    for (const path of yaml) {
      const [, link] = /^# yaml-language-server: \$schema=(\S+)\n/.exec(await readFile(path, 'utf8')) ?? [];
      const schema = resolve(dirname(path), link!);
      expect(schema.startsWith(join(school, 'schemas'))).toBe(true);
      expect(JSON.parse(await readFile(schema, 'utf8'))).toHaveProperty('properties.name');
    }
  });

  it('writes nothing where one of its files is there already', async () => {
    const path = join(folder, 'first-lesson.md');
    await writeFile(path, 'mine\n');
    const { code, err } = await run('school', folder);
    expect(code).toBe(1);
    expect(err).toContain(`Already there, and left as it is: ${path}.`);
    expect(await filesIn(folder)).toEqual([path]);
    expect(await readFile(path, 'utf8')).toBe('mine\n');
  });
});

describe('in a school, chalkwing new', () => {
  beforeEach(() => run('school', folder));
  const inSchool = (...typed: readonly string[]) => run(...typed, '--school', folder);

  it.each([
    ['lesson', 'Glide in the wind', 'glide-in-the-wind.md', 'title: Glide in the wind'],
    ['lesson', 'glide-in-the-wind', 'glide-in-the-wind.md', 'title: Glide in the wind'],
    ['lesson', 'High: or low? #2', 'high-or-low-2.md', 'title: "High: or low? #2"'],
    ['aircraft', 'Osier 15', join('fleet', 'osier-15.yaml'), 'name: Osier 15'],
    ['aircraft', '$& 15', join('fleet', '15.yaml'), 'name: $& 15'],
    ['airfield', 'Sallow Holt', join('airfields', 'sallow-holt.yaml'), 'name: Sallow Holt'],
  ])('%s "%s" starts %s', async (kind, name, path, line) => {
    const { code, out } = await inSchool(kind, name);
    expect(code).toBe(0);
    expect(out.startsWith(`${join(folder, path)}\n`)).toBe(true);
    expect((await readFile(join(folder, path), 'utf8')).split('\n')).toContain(line);
  });

  it('starts nothing that is wrong or has a part missing', async () => {
    await inSchool('lesson', 'High: or low?');
    await inSchool('aircraft', 'Osier: 15');
    await inSchool('airfield', 'Sallow & Holt');
    expect(await messagesOf(folder)).toEqual([]);
    const school = await readSchool(folder);
    expect(school.value?.fleet.get('osier-15')?.name).toBe('Osier: 15');
    expect(school.value?.airfields.get('sallow-holt')?.name).toBe('Sallow & Holt');
  });

  it('uses the schemas of the school, and of a folder above it', async () => {
    await rm(join(folder, 'school.yaml'));
    const school = join(folder, 'second');
    await run('school', school);
    await rm(join(school, 'schemas'), { recursive: true });
    await run('aircraft', 'Osier 15', '--school', school);
    const text = await readFile(join(school, 'fleet', 'osier-15.yaml'), 'utf8');
    expect(text).toMatch(/^# yaml-language-server: \$schema=\.\.\/\.\.\/schemas\/aircraft\.schema\.json\n/);
    expect(existsSync(join(school, 'schemas'))).toBe(false);
  });

  it('brings the schema where there is none', async () => {
    await rm(join(folder, 'schemas'), { recursive: true });
    await inSchool('airfield', 'Sallow Holt');
    expect(await readdir(join(folder, 'schemas'))).toEqual(['airfield.schema.json']);
  });

  it('leaves a file that is there as it is, and says what to do', async () => {
    await inSchool('aircraft', 'Osier 15');
    const path = join(folder, 'fleet', 'osier-15.yaml');
    await writeFile(path, 'mine\n');
    const { code, err } = await inSchool('aircraft', 'osier 15');
    expect(code).toBe(1);
    expect(err).toBe(
      `Already there, and left as it is: ${path}. Choose another name, or move it away first; nothing was written\n`,
    );
    expect(await readFile(path, 'utf8')).toBe('mine\n');
  });

  it('refuses a name that no file can have', async () => {
    const { code, err } = await inSchool('lesson', '***');
    expect(code).toBe(1);
    expect(err).toContain('use letters or digits');
  });
});

it('says how to start a school where there is none', async () => {
  const { code, err } = await run('lesson', 'Glide', '--school', join(folder, 'none'));
  expect(code).toBe(1);
  expect(err).toContain(`chalkwing new school ${join(folder, 'none')}`);
  expect(await filesIn(folder)).toEqual([]);
});
