import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lessonOf, openTrialSchool, plain, type Ran, type TrialSchool, wordsOf } from './packet-school.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';

// The real command prints both editions, and both are read back: whatever is in the student's must be in the
// instructor's on the same page, at the same place.

const notes = lessonOf(
  [
    '## First',
    'A short paragraph.',
    [
      ':::instructor',
      'The plover note is longer than its paragraph, so that it goes on beside a heading with its rule and a paragraph.',
      '',
      '- Watch the speed, 41 kt.',
      '- Watch the *bank*, at 30° and **no more**.',
      ':::',
    ].join('\n'),
    'A second one.',
    ':::instructor\nPlover two.\n:::',
    ':::instructor\nPlover three, for the same paragraph.\n:::',
    '## Before a table',
    'One line.',
    ':::instructor\nThis plover would run into the table: its paragraph is of one line only, and the note of several.\n:::',
    '::keys',
    ':::instructor\nPlover after a table.\n:::',
    '## Third',
    'Text that follows the heading.',
    ':::student\nWrite down where you expect to turn.\n:::',
    '::pattern',
    '1. One\n2. Two',
    ':::instructor\nPlover beside a list.\n:::',
    ...Array.from({ length: 9 }, (_, index) => [
      `## Part ${index + 1}`,
      'Hold the glide speed before anything else, and look along the runway. '.repeat(6),
      `:::instructor\n${'Plover: ask before each turn which way the drift is. '.repeat(1 + (index % 5))}\n:::`,
    ]).flat(),
    '::exercises{count=6 seed=7}',
    '## Last',
    'The end.',
  ].join('\n\n'),
);

const sheets = [
  ['notes', 'A4'],
  ['notes', 'Letter'],
  ['judging-the-glide', 'A4'],
  ['engine-failure', 'Letter'],
] as const;

const lessonsOn = (paper: string) => sheets.filter(([, on]) => on === paper).map(([lesson]) => lesson);

let school: TrialSchool;
const ran: Ran[] = [];
const pdfs = new Map<string, { student: ReadPdf; instructor: ReadPdf }>();

beforeAll(async () => {
  school = await openTrialSchool();
  await school.write('lessons/notes.md', notes);
  for (const paper of ['A4', 'Letter']) {
    const asked = [...lessonsOn(paper), '--aircraft', 'osier-15', '--edition', 'both'];
    ran.push(await school.build([...asked, '--paper', paper, '--out', `dist/${paper}`]));
  }
  for (const [lesson, paper] of sheets) {
    const read = async (ending: string) =>
      readPdf(await school.read(`dist/${paper}/${lesson}/osier-15${ending}`));
    pdfs.set(`${lesson} ${paper}`, {
      student: await read('.pdf'),
      instructor: await read('.instructor.pdf'),
    });
  }
});
afterAll(() => school.remove());

/** Page and place of every word, except for those that name the edition and its fingerprint. */
function placedWords({ pages }: ReadPdf): string[] {
  return pages.flatMap(({ words }, page) =>
    words
      .filter(({ text }) => !/edition · .* inputs/.test(text))
      .map(({ text, x, y }) => `${page + 1} ${x.toFixed(1)} ${y.toFixed(1)} ${text}`),
  );
}

/** Which of `these` are not in `those`, counted. */
function without(these: readonly string[], those: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const each of those) counts.set(each, (counts.get(each) ?? 0) + 1);
  return these.filter((each) => {
    const count = counts.get(each) ?? 0;
    counts.set(each, count - 1);
    return count <= 0;
  });
}

describe('both editions', () => {
  it('are built by one command, each under its own name', async () => {
    for (const { code, err } of ran)
      expect({ code, err: err.replace(/^Printing .*\n/gm, '') }).toEqual({ code: 0, err: '' });
    const names = lessonsOn('A4').flatMap((lesson) =>
      ['.html', '.instructor.html', '.instructor.pdf', '.instructor.txt', '.pdf', '.txt'].map(
        (end) => `dist/A4/${lesson}/osier-15${end}`,
      ),
    );
    expect((await school.built()).filter((path) => path.startsWith('dist/A4/'))).toEqual(names.sort());
  });
});

describe.each(sheets)('the two editions of %s on %s', (lesson, paper) => {
  const both = () => pdfs.get(`${lesson} ${paper}`)!;

  it('have as many pages, and the same headings', () => {
    const { student, instructor } = both();
    expect(instructor.pages.length).toBe(student.pages.length);
    expect(instructor.bookmarks).toEqual(student.bookmarks);
  });

  it('have every heading, figure, table and word that both have at the same place of the same page', () => {
    const { student, instructor } = both();
    const inStudents = placedWords(student);
    expect(inStudents.length).toBeGreaterThan(500);
    expect(inStudents.filter((word) => /(Figure|Table)\s\d/.test(word)).length).toBeGreaterThan(1);
    expect(without(inStudents, placedWords(instructor))).toEqual([]);
  });

  it('differ in notes and answers, which the student does not have', () => {
    const { student, instructor } = both();
    const more = without(placedWords(instructor), placedWords(student));
    expect(more.length).toBeGreaterThan(5);
    const told = (pdf: ReadPdf) => plain(pdf.pages.map(({ text }) => text).join(' '));
    for (const words of [/ is right: /, /– right/, /Worked\. /, /Wrong: /]) {
      expect(told(instructor)).toMatch(words);
      expect(told(student)).not.toMatch(words);
    }
  });

  it("have nothing of an answer or a note in the student's HTML", async () => {
    const student = await school.text(`dist/${paper}/${lesson}/osier-15.html`);
    const instructor = await school.text(`dist/${paper}/${lesson}/osier-15.instructor.html`);
    const hidden = [
      ...instructor.matchAll(/<aside class="note[\s\S]*?<\/aside>|<div class="worked-answer[\s\S]*?<\/div>/g),
    ].map(([found]) => wordsOf(found));
    expect(hidden.length).toBeGreaterThan(3);
    for (const words of hidden) expect(wordsOf(student)).not.toContain(words);
    expect(student).not.toMatch(/plover|class="right-choice"/i);
  });

  it('have their notes on the sheet, none under or over another line of the page', () => {
    const { student, instructor } = both();
    const more = without(placedWords(instructor), placedWords(student)).map((line) => {
      const [page, x, y] = line.split(' ').map(Number) as [number, number, number];
      return { page, x, y, line };
    });
    for (const { page, x, y, line } of more) {
      const { width, height, words } = instructor.pages[page - 1]!;
      expect(x, line).toBeLessThan(width - 15);
      expect(y, line).toBeLessThan(height - 19);
      // Baselines of one column that are nearer than the type is high would lie over each other.
      const near = words.filter(
        (word) => Math.abs(word.x - x) < 1 && Math.abs(word.y - y) > 0.1 && Math.abs(word.y - y) < 2.5,
      );
      expect(near, line).toEqual([]);
    }
  });
});
