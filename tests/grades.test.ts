import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { VFile } from 'vfile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check } from '../src/cli/check.ts';
import { messageReport } from '../src/cli/message-report.ts';
import { bindVolume, openBook } from '../src/press/book/book-order.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { type BuildRequest, buildLesson } from '../src/press/packet/build.ts';
import { GradeTally } from '../src/press/packet/grade-tally.ts';
import { readSchool } from '../src/school/read.ts';
import { parseWind } from '../src/units/wind-text.ts';
import { lessonOf, plain, wordsOf } from './packet-school.ts';

/*
 * Plans of every grade, as packets, in the book and when checked, without a browser. The Osier 15 has a limit of 9 kt
 * of crosswind; a turn with more than 45 degrees of bank is not a medium turn (FAA-H-8083-3, chapter 3).
 */

const words =
  'At :key[base-key]{show=height} look at the spot.\n\n::pattern\n\n::keys\n\n## More\n\nThe end.';
const crosswind = 'wind: 330/14kt';
const shows = 'shows: not-to-be-flown';
/** The front matter begins at line 2; these are in lines 4 and 5. */
const trial: Readonly<Record<string, readonly string[]>> = {
  plain: [],
  cross: [crosswind],
  shown: [crosswind, shows],
  steep: ['bank: 46 deg'],
  flyable: [shows],
  unreached: ['height: 300 ft', shows],
};
const date = new Date('2031-05-06T00:00:00Z');
const version = 'trial';
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-grades-'));
  await cp(fileURLToPath(new URL('../lessons', import.meta.url)), folder, { recursive: true });
  for (const [name, settings] of Object.entries(trial))
    await writeFile(join(folder, `${name}.md`), lessonOf(words, settings));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** `line:column severity rule words` */
function saidOn({ messages }: VFile): string[] {
  return messages.map(({ line, column, fatal, ruleId, reason }) => {
    const severity = fatal ? 'error' : fatal === false ? 'warning' : 'note';
    return plain(`${line ?? 0}:${column ?? 0} ${severity} ${ruleId} ${reason}`);
  });
}

async function build(lesson: string, changes: Partial<BuildRequest> = {}) {
  const { withSoundAircraft: school } = await readSchool(folder, date);
  const tally = new GradeTally();
  const built = await buildLesson({
    ...{ school: school!, lesson, aircraft: ['osier-15'], choices: {}, asked: {} },
    ...{ editions: ['student'], paper: 'A4', date, version, tally },
    ...changes,
  });
  const html = built.packets.map(({ document }) => documentHtml(document));
  return { ...built, html, said: saidOn(built.file), count: tally.words('packet') };
}

describe('a plan that is not to be flown', () => {
  it('has no packet, and an error on the lesson, at what was typed, with aircraft and figures', async () => {
    const { packets, said, count } = await build('cross');
    expect(packets).toEqual([]);
    expect(said).toEqual([
      expect.stringMatching(
        /^4:7 error not-to-be-flown Osier 15, runway 24, wind 330° 14 kt, engine idling: not to be flown\. .*The crosswind is 14 kt; the limit of the Osier 15 is 9 kt\./,
      ),
    ]);
    expect(count).toBe('1 packet not to be flown (not printed).');
  });

  it('says what would be flyable, and that is', async () => {
    await writeFile(join(folder, 'low.md'), lessonOf(words, ['height: 500 ft']));
    const { packets, said } = await build('low');
    expect(packets).toEqual([]);
    const [, height] = /^4:9 error .*Sound from ([\d,]+) ft at the downwind key\.$/.exec(said[0]!)!;
    await writeFile(join(folder, 'low.md'), lessonOf(words, [`height: ${height} ft`]));
    const higher = await build('low');
    expect(higher.packets).toHaveLength(1);
    expect(higher.count ?? '').not.toMatch(/beyond|not to be flown/);
    await writeFile(join(folder, 'low.md'), lessonOf(words, ['height: 500 ft', shows]));
    expect(plain((await build('low')).html[0]!)).toContain(
      `<p class="remedy">Sound from ${height} ft at the downwind key.</p>`,
    );
  });

  it('is said with option and lesson where its wind was asked for, and counted for each packet', async () => {
    const asked = { wind: '--wind' };
    const choices = { wind: parseWind('330/14kt') };
    const built = await build('steep', { asked, choices, editions: ['student', 'instructor'] });
    expect(built.packets).toEqual([]);
    expect(built.said).toEqual([]);
    expect(built.wrongChoices.map(plain)).toEqual([
      expect.stringMatching(/^--wind: steep, Osier 15, .*: not to be flown\. .*The crosswind is 14 kt/),
    ]);
    expect(built.count).toBe('2 packets not to be flown (not printed).');
  });

  it('that does not even reach the spot has no packet, whatever its lesson shows', async () => {
    const { packets, said, count } = await build('unreached');
    expect(packets).toEqual([]);
    expect(said).toEqual([expect.stringMatching(/^4:9 error not-to-be-flown .*The spot cannot be made/)]);
    expect(count).toBe('1 packet not to be flown (not printed).');
  });
});

describe('a lesson that shows a plan not to be flown', () => {
  it('has its packet, and a note in place of the error', async () => {
    const { packets, said, count } = await build('shown');
    expect(packets).toHaveLength(1);
    expect(said).toEqual([
      expect.stringMatching(/^4:7 note not-to-be-flown Osier 15, .*: not to be flown\./),
    ]);
    expect(count).toBe('1 packet not to be flown (shown as such).');
  });

  it('bears the band: at the head of every page, above the title, and in sight on a screen', async () => {
    const [html] = (await build('shown')).html;
    const pages = [...html!.matchAll(/@page ?(:\w+)\{[^\n]*/g)].filter(([rule]) =>
      rule.includes('NOT TO BE FLOWN'),
    );
    expect(pages.map(([, which]) => which)).toEqual([':right', ':left', ':first']);
    for (const [rule] of pages) {
      const [head] = /@top-center\{[^}]*\}/.exec(rule)!;
      expect(head).toContain('color:#fff;background:#000');
      expect(plain(head)).toContain('crosswind 14 kt, at most 9 kt');
    }
    const body = html!.slice(html!.indexOf('<body'));
    const places = ['class="page-band"', 'class="grade-band not-to-be-flown"', 'class="masthead"'];
    const found = places.map((each) => body.indexOf(each));
    expect(found).not.toContain(-1);
    expect([...found].sort((a, b) => a - b)).toEqual(found);
  });

  it('has its figures struck through, and its drawings and tables named', async () => {
    const [html] = (await build('shown')).html;
    expect(plain(html!)).toMatch(/At <s class="not-to-be-flown"[^>]*>[\d,]+ ft/);
    const captions = [...html!.matchAll(/<(figcaption|caption)>([\s\S]*?)<\/\1>/g)];
    const marked = captions.filter(([, , inside]) => inside!.includes('grade-mark not-to-be-flown'));
    // The drawing and the table of the lesson, and none of the workings.
    expect(marked.map(([, , inside]) => wordsOf(inside!).slice(0, 24))).toEqual(
      ['Figure 1 not to be flown', 'Table 1 not to be flown '].map((each) =>
        expect.stringContaining(each.trim()),
      ),
    );
  });

  it('is told where its plan is flyable, at the key, for each aircraft', async () => {
    const { packets, said } = await build('flyable', { aircraft: ['osier-15', 'withy-80'] });
    expect(packets).toHaveLength(2);
    expect(said).toEqual([
      expect.stringMatching(/^4:8 warning shows Osier 15, .*: flyable, though the lesson says `shows: not-/),
      expect.stringMatching(/^4:8 warning shows Withy 80, .*: flyable/),
    ]);
  });
});

describe('a plan beyond a limit of good practice', () => {
  it('is printed, with a warning at what was typed', async () => {
    const { packets, said, count } = await build('steep');
    expect(packets).toHaveLength(1);
    expect(said[0]).toMatch(
      /^4:7 warning beyond-good-practice Osier 15, .*: beyond a limit of good practice\. .*46/,
    );
    expect(count).toBe('1 packet beyond a limit of good practice.');
  });

  it('has a band above its title, a line for each limit: what, value, limit and source', async () => {
    const [html] = (await build('steep')).html;
    const body = html!.slice(html!.indexOf('<body'), html!.indexOf('<header'));
    const [band] = /<section class="grade-band beyond-good-practice"[\s\S]*?<\/section>/.exec(body)!;
    expect(wordsOf(band)).toMatch(
      /^Beyond a limit of good practice .*Bank 46°, at most 45° FAA-H-8083-3, chapter 3/,
    );
    expect(html).not.toMatch(/NOT TO BE FLOWN|class="page-band|<s class/);
  });
});

it('a sound plan has no band, no message and no count', async () => {
  const { html, said, count } = await build('plain');
  expect([said, count]).toEqual([[], undefined]);
  expect(html[0]!.slice(html[0]!.indexOf('<body'))).not.toMatch(/grade-band|page-band|not to be flown/);
});

describe('chalkwing check', () => {
  it('takes a plan not to be flown for an error, unless the lesson shows it, and counts the plans', async () => {
    const only = async (name: string) => {
      const tally = new GradeTally();
      const files = await check(folder, [name], tally);
      const own = files.find(({ stem }) => stem === name)!;
      const graded = saidOn(own).filter((line) => /not to be flown/.test(line));
      return { graded, report: messageReport([own]), counts: tally.counts };
    };
    const cross = await only('cross');
    expect(cross.graded[0]).toMatch(/^4:7 error not-to-be-flown Osier 15, /);
    expect(cross.counts).toMatchObject({ shown: 0 });
    expect(cross.counts.refused).toBe(cross.graded.length);
    const shown = await only('shown');
    expect(shown.graded[0]).toMatch(/^4:7 note not-to-be-flown Osier 15, /);
    expect(shown.report).toMatch(/4:7 {2}note {2}Osier 15, .*: not to be flown/);
    expect(shown.report).toMatch(/\d+ notes? in 1 of 1 file\n$/);
    expect(shown.counts).toMatchObject({ refused: 0, shown: cross.counts.refused });
  });
});

it('chalkwing check warns of a plan that begins near the floor of its band, at its height, and a build does not', async () => {
  // The 90 flies from a base key at 700 ft; the Withy 80 needs nearly as much.
  const near = lessonOf('The words.', ['aircraft: withy-80', 'height: 700 ft']).replace('"180"', '"90"');
  await writeFile(join(folder, 'near.md'), near);
  const own = (await check(folder, ['near'])).find(({ stem }) => stem === 'near')!;
  const inHand = (said: string[]) => said.filter((line) => / in-hand /.test(line));
  expect(inHand(saidOn(own))).toEqual([
    expect.stringMatching(
      /^5:9 warning in-hand Withy 80, .*: the plan stands near the floor of its band at the base key, \d0 ft above it\. Begin higher: 50 ft/,
    ),
  ]);
  expect(inHand((await build('near', { aircraft: ['withy-80'] })).said)).toEqual([]);
});

describe('the book', () => {
  async function bind(chapters: readonly string[]) {
    const { withSoundAircraft: school } = await readSchool(folder, date);
    const tally = new GradeTally();
    const source = {
      school: school!,
      title: 'A book',
      choices: {},
      asked: {},
      date,
      version,
      common: {},
      tally,
    };
    const book = await openBook(source, chapters);
    const volume = { path: 'book', aircraft: ['osier-15'], edition: 'student', paper: 'A4' } as const;
    const bound = await bindVolume(book, { ...volume, refused: () => undefined });
    return {
      html: bound && documentHtml(bound.document()),
      grades: bound?.grades,
      tally,
      said: book.files.flatMap(saidOn),
    };
  }

  it('is not bound with a plan not to be flown', async () => {
    const { html, tally, said } = await bind(['plain', 'cross']);
    expect(html).toBeUndefined();
    expect(tally.words('chapter')).toBe('1 chapter not to be flown (not printed).');
    expect(said).toEqual([expect.stringMatching(/^4:7 error not-to-be-flown Osier 15, /)]);
  });

  it('has the band on the pages of the chapter that shows one, and on no other', async () => {
    const { html, grades } = await bind(['plain', 'shown', 'steep']);
    expect(grades).toEqual(['sound', 'not-to-be-flown', 'beyond-good-practice']);
    const rules = [...html!.matchAll(/@page (\w+):(?:left|right)\{[^\n]*/g)];
    const banded = rules.filter(([rule]) => rule.includes('NOT TO BE FLOWN'));
    expect(banded.map(([, page]) => page)).toEqual(['c2', 'c2']);
    const chapter = (number: number) =>
      html!.slice(html!.indexOf(`<section class="chapter c${number}"`)).split('</header>')[0]!;
    expect(chapter(1)).not.toContain('grade-band');
    expect(chapter(2)).toContain('class="grade-band not-to-be-flown"');
    expect(chapter(3)).toContain('class="grade-band beyond-good-practice"');
    expect(wordsOf(html!)).toContain('2 A trial lesson (not to be flown)');
  });
});
