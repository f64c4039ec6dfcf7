import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { VFile } from 'vfile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { components } from '../components/list.ts';
import { parseLesson } from '../src/lesson/parse-lesson.ts';
import { renderLesson } from '../src/lesson/render-lesson.ts';
import { openLesson } from '../src/press/packet/build.ts';
import { packetContext } from '../src/press/packet/packet-context.ts';
import { type Choices, planOf, scenarioOf } from '../src/press/packet/scenario.ts';
import { type PaperName, papers } from '../src/press/paper/paper.ts';
import { schoolFor } from '../src/press/printing/packet-key.ts';
import { readSchool } from '../src/school/read.ts';
import type { School } from '../src/school/school.ts';
import { trialLessons } from './build-runs.ts';

// The keys by which a build knows what it has printed, for the demonstration school and two short lessons.

const lessons = fileURLToPath(new URL('../lessons', import.meta.url));
const day = new Date('2031-05-06T00:00:00Z');
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-keys-'));
  await cp(lessons, folder, { recursive: true });
  for (const [name, text] of Object.entries(trialLessons)) await writeFile(join(folder, `${name}.md`), text);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

interface Asked {
  readonly choices?: Choices;
  readonly papers?: readonly PaperName[];
  readonly date?: Date;
}

/** The keys of the student's packets of both lessons, for two aircraft. */
async function keys({
  choices = {},
  papers: sizes = ['A4'],
  date = day,
}: Asked = {}): Promise<Record<string, string>> {
  const { files, value: school } = await readSchool(folder, date);
  if (!school) throw new Error(files.flatMap(({ messages }) => messages.map(String)).join('\n'));
  const found: Record<string, string> = {};
  for (const lesson of Object.keys(trialLessons)) {
    const { orders } = await openLesson({
      school,
      lesson,
      aircraft: ['osier-15', 'sallow-10'],
      variants: [{ choices, asked: {}, folder: '' }],
      editions: ['student'],
      papers: sizes,
      date,
      version: '1',
      common: { airfields: files.filter(({ path }) => /airfields/.test(path)).map(String) },
    });
    for (const { path, key } of orders) found[path] = key()!;
  }
  return found;
}

const all = ['one', 'two'].flatMap((lesson) => ['osier-15', 'sallow-10'].map((id) => join(lesson, id)));
const changed = (before: Record<string, string>, after: Record<string, string>) =>
  Object.keys(before).filter((path) => before[path] !== after[path]);

/** The packets whose keys change when one file changes; the file is then put back. */
async function changedBy(name: string, from: string | RegExp, to: string): Promise<string[]> {
  const path = join(folder, name);
  const own = await readFile(path, 'utf8');
  const before = await keys();
  const edited = own.replace(from, to);
  expect(edited).not.toBe(own);
  await writeFile(path, edited);
  try {
    return changed(before, await keys());
  } finally {
    await writeFile(path, own);
  }
}

describe('the key of a packet', () => {
  it('stays while nothing changes, and no two packets share one', async () => {
    const first = await keys();
    expect(Object.keys(first)).toEqual(all);
    expect(new Set(Object.values(first)).size).toBe(all.length);
    expect(await keys()).toEqual(first);
  });

  it('changes for a changed lesson in its packets alone', async () => {
    expect(await changedBy('one.md', 'at the spot', 'to the spot')).toEqual(all.slice(0, 2));
  });

  it('changes for a changed aircraft in its packets alone', async () => {
    expect(await changedBy('fleet/sallow-10.yaml', /^name: .*$/m, 'name: Sallow 11')).toEqual([
      all[1],
      all[3],
    ]);
    expect(await changedBy('fleet/withy-80.yaml', /^name: .*$/m, 'name: Withy 81')).toEqual([]);
  });

  it('changes for what enters every packet of the school', async () => {
    expect(await changedBy('airfields/fallow-reach.yaml', /^name: .*$/m, 'name: Fallow Meadow')).toEqual(all);
    expect(await changedBy('school.yaml', 'Practise these', 'Fly these')).toEqual(all);
    expect(await changedBy('school.yaml', 'height: ft', 'height: m')).toEqual(all);
    expect(await changedBy('school.yaml', 'final-turn: 300 ft', 'final-turn: 400 ft')).toEqual(all);
    expect(await changedBy('school.yaml', 'wind: 210/12kt', 'wind: 210/11kt')).toEqual(all);
  });

  it('stays for what enters none', async () => {
    expect(await changedBy('school.yaml', 'title: Gliding In', 'title: Gliding Down')).toEqual([]);
    expect(await changedBy('school.yaml', '    - choosing-fields\n', '')).toEqual([]);
    expect(await changedBy('power-off-90.md', /$/, '\nMore words.\n')).toEqual([]);
  });

  it('changes with what is asked for, and not with the day, which is looked at apart', async () => {
    const before = await keys();
    const others: Asked[] = [
      { choices: { wind: { from: 1, speed: 3 } } },
      { choices: { gust: 9 } },
      { choices: { power: 'stopped' } },
      { choices: { circuit: 'right' } },
      { choices: { temperature: 300 } },
      { choices: { qnh: 100_000 } },
      { papers: ['Letter'] },
    ];
    for (const asked of others) expect(changed(before, await keys(asked))).toEqual(all);
    expect(await keys({ date: new Date('2032-01-01T00:00:00Z') })).toEqual(before);
  });

  it('stays from day to day also where magnetic variation is worked out for the day', async () => {
    const path = join(folder, 'airfields', 'fallow-reach.yaml');
    const own = await readFile(path, 'utf8');
    const position = 'position: { latitude: 51.2 deg N, longitude: 1.5 deg W }';
    await writeFile(path, `${own.replace(/^(variation|position):.*\n/gm, '')}\n${position}\n`);
    try {
      const later = new Date('2029-01-01T00:00:00Z');
      const variation = async (date: Date) =>
        (await readSchool(folder, date)).value!.airfields.get('fallow-reach')!.variation;
      const early = new Date('2027-01-01T00:00:00Z');
      expect(await variation(early)).not.toBe(await variation(later));
      expect(await keys({ date: early })).toEqual(await keys({ date: later }));
    } finally {
      await writeFile(path, own);
    }
  });
});

describe('a packet of the demonstration', () => {
  it('reads nothing of the school that is not in its key', async () => {
    const { value: school } = await readSchool(lessons, day);
    const read = new Set<string>();
    const watched = new Proxy(schoolFor(school!, 'osier-15'), {
      get: (of, property: keyof School & string) => {
        read.add(property);
        return of[property];
      },
      ownKeys: () => {
        throw new Error('All of the school is read at once');
      },
    });
    const seen = new Set<string>();
    for (const name of school!.lessonIds) {
      const path = join(lessons, `${name}.md`);
      const file = new VFile({ path, value: await readFile(path, 'utf8') });
      const lesson = parseLesson(file, components);
      // A lesson with nothing in it but what others have shown would show nothing new.
      const isNew = lesson.uses.some(({ component }) => !seen.has(component.name));
      if (!isNew) continue;
      for (const { component } of lesson.uses) seen.add(component.name);
      const scenario = scenarioOf(school!, lesson.frontMatter!, 'osier-15', {});
      const flown = { request: scenario.request, plan: planOf(scenario) };
      const context = packetContext(watched, flown, 'instructor', papers.A4);
      renderLesson(lesson, context, file);
    }
    expect(read.size).toBeGreaterThan(0);
    const inKey = ['name', 'cautions', 'grading', 'minimums', 'units', 'fleet', 'airfields', 'faults'];
    expect([...read].filter((property) => !inKey.includes(property))).toEqual([]);
  });
});
