import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { VFile } from 'vfile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check } from '../src/cli/check.ts';
import { bindVolume, openBook } from '../src/press/book/book-order.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { type BuildRequest, buildLesson } from '../src/press/packet/build.ts';
import { readSchool } from '../src/school/read.ts';
import { parseWind } from '../src/units/wind-text.ts';
import { lessonOf, plain, wordsOf } from './packet-school.ts';

/*
 * The day that a lesson asks for, in packets, in the book and when checked, without a browser. Runway 24 is on 238
 * degrees; the school's usual wind is 210/12kt, of which 5.6 kt is across.
 */

const day = 'day: { most-wind: 10 kt, most-crosswind: 50 % }';
/** These are in lines 4 and 5. */
const trial: Readonly<Record<string, readonly string[]>> = {
  usual: [day],
  typed: ['wind: 240/11kt', day],
  fit: ['wind: 240/10kt', day],
  least: ['wind: 240/3kt', 'day: { least-wind: 4 kt }'],
};
const date = new Date('2031-05-06T00:00:00Z');
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-day-'));
  await cp(fileURLToPath(new URL('../lessons', import.meta.url)), folder, { recursive: true });
  for (const [name, settings] of Object.entries(trial))
    await writeFile(join(folder, `${name}.md`), lessonOf('The words.', settings));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** `line:column severity rule words` of what is said about the day. */
function saidOn({ messages }: VFile): string[] {
  return messages
    .filter(({ ruleId }) => ruleId === 'day')
    .map(({ line, column, fatal, ruleId, reason }) =>
      plain(`${line ?? 0}:${column ?? 0} ${fatal === false ? 'warning' : 'other'} ${ruleId} ${reason}`),
    );
}

async function build(lesson: string, changes: Partial<BuildRequest> = {}) {
  const { withSoundAircraft: school } = await readSchool(folder, date);
  const built = await buildLesson({
    ...{ school: school!, lesson, aircraft: ['osier-15'], choices: {}, asked: {} },
    ...{ editions: ['student'], paper: 'A4', date, version: 'trial' },
    ...changes,
  });
  return {
    said: saidOn(built.file),
    words: wordsOf(documentHtml(built.packets[0]!.document)),
    onScreen: built.packets[0]!.document.onScreen,
  };
}

describe('a build', () => {
  it('warns at the day where the wind is the usual one, at the wind where it is typed', async () => {
    expect((await build('usual')).said).toEqual([
      expect.stringMatching(
        /^4:6 warning day Osier 15, runway 24, wind 210° 12 kt, engine idling: not the day that the lesson asks for\. The wind is 12 kt, and the lesson asks for no more than 10 kt: choose another wind, or another day\.$/,
      ),
      expect.stringMatching(/^4:6 warning day .* The wind has 6 kt across the runway, .* no more than 4 kt:/),
    ]);
    expect((await build('typed')).said).toEqual([
      expect.stringMatching(/^4:7 warning day .* wind 240° 11 kt, .* The wind is 11 kt/),
    ]);
    expect((await build('fit')).said).toEqual([]);
    expect((await build('least')).said).toEqual([
      expect.stringMatching(/^4:7 warning day .* The wind is 3 kt, and the lesson asks for at least 4 kt:/),
    ]);
  });

  it('points at no line where the wind was asked for, or its gust', async () => {
    const wind = { choices: { wind: parseWind('240/12kt') }, asked: { wind: '--wind 240/12kt' } };
    expect((await build('typed', wind)).said).toEqual([
      expect.stringMatching(/^0:0 warning day .* The wind is 12 kt/),
    ]);
    const gust = { choices: { gust: 9 }, asked: { gust: '--gust 9m/s' } };
    expect((await build('fit', gust)).said).toEqual([
      expect.stringMatching(/^0:0 warning day .* The wind in gusts is 17 kt/),
    ]);
  });

  it('prints on the first page what is asked for, and the study page has it too', async () => {
    const { words, onScreen } = await build('typed');
    expect(words).toMatch(
      /The day this lesson asks for A wind of no more than 10 kt, and of no more than 4\.5 kt across the runway, half of the limit of the Osier 15\. Gusts count\. The wind is 11 kt, and/,
    );
    expect((await build('fit')).words).not.toContain('choose another wind');
    expect(documentHtml(onScreen!())).toContain('"mostCrosswind":{"share":0.5}');
  });
});

it('chalkwing check says the same', async () => {
  const files = await check(folder, ['typed']);
  const said = saidOn(files.find(({ stem }) => stem === 'typed')!);
  expect(said[0]).toMatch(/^4:7 warning day Osier 15, .* The wind is 11 kt/);
});

it('a chapter of the book has it among its cautions, and the book its warning', async () => {
  const { withSoundAircraft: school } = await readSchool(folder, date);
  const source = {
    school: school!,
    title: 'A book',
    choices: {},
    asked: {},
    date,
    version: 'trial',
    common: {},
  };
  const book = await openBook(source, ['typed']);
  const volume = { path: 'book', aircraft: ['osier-15'], edition: 'student', paper: 'A4' } as const;
  const bound = await bindVolume(book, { ...volume, refused: () => undefined });
  expect(wordsOf(documentHtml(bound!.document()))).toMatch(
    /The day this lesson asks for .* The wind is 11 kt, and the lesson/,
  );
  expect(book.files.flatMap(saidOn)).toEqual([expect.stringMatching(/^4:7 warning day Osier 15, /)]);
});
