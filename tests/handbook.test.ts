import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { terms } from '../src/press/book/terms.ts';
import {
  day,
  openTrialSchool,
  plain,
  type Ran,
  type TrialSchool,
  tableRows,
  wordsOf,
} from './packet-school.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';

let school: TrialSchool;
let ran: Ran;
let fleet: Ran;
let student: ReadPdf;
let instructor: ReadPdf;
let volume: ReadPdf;
let html: string;

const bind = (args: readonly string[]) => school.run(['handbook', '--date', day, ...args]);

beforeAll(async () => {
  school = await openTrialSchool();
  const settings = await school.text('lessons/school.yaml');
  const shorter = settings.replace(
    /chapters:[\s\S]*?\n {2}aircraft:.*/,
    'chapters: [judging-the-glide, power-off-90]\n  aircraft: [osier-15]',
  );
  expect(shorter).not.toBe(settings);
  await school.write('lessons/school.yaml', shorter);
  ran = await bind(['--edition', 'both']);
  fleet = await bind(['--fleet', '--aircraft', 'osier-15', 'withy-80', '--paper', 'Letter']);
  student = await readPdf(await school.read('dist/handbook/osier-15.pdf'));
  instructor = await readPdf(await school.read('dist/handbook/osier-15.instructor.pdf'));
  volume = await readPdf(await school.read('dist/handbook/fleet.pdf'));
  html = await school.text('dist/handbook/osier-15.html');
});
afterAll(() => school.remove());

const pageText = (pdf: ReadPdf, page: number) => plain(pdf.pages[page - 1]?.text ?? '').replaceAll('- ', '-');

/** What was said, apart from how far the printing has got. */
const beside = (err: string) => err.replace(/^Printing .*\n/gm, '');

/** What a list of the front matter says: words, and the page that they are on. */
function entries(list: string): { text: string; page: number }[] {
  const start = html.indexOf(`<section class="matter ${list}"`);
  const part = html.slice(start, html.indexOf('</section>', start));
  return [...part.matchAll(/<p class="entry[\s\S]*?<\/p>/g)].map(([entry]) => {
    const [, text, page] = /class="entry-text">([\s\S]*?)<\/a>[\s\S]*class="page-number"[^>]*>(\d+)</.exec(
      entry,
    )!;
    return { text: wordsOf(text!), page: Number(page) };
  });
}

describe("a school's book", () => {
  it('is printed in both editions by one command, without a message', () => {
    expect({ code: ran.code, err: beside(ran.err) }).toEqual({ code: 0, err: '' });
  });

  it('has a contents list whose page numbers are true', () => {
    const found = entries('contents');
    expect(found.map(({ text }) => text)).toEqual(
      expect.arrayContaining([
        'Osier 15',
        '1 Judging the glide',
        '2 The 90° power-off approach',
        'Glossary',
        'Index',
      ]),
    );
    expect(found.length).toBeGreaterThan(20);
    for (const { text, page } of found) {
      const words = text.replace(/^\d+ /, '');
      expect(pageText(student, page), `${text} on page ${page}`).toContain(words);
    }
    // They come in page order.
    const pages = found.map(({ page }) => page);
    expect(pages).toEqual([...pages].sort((a, b) => a - b));
  });

  it('has a list of figures whose page numbers are true, each figure numbered in its chapter', () => {
    const found = entries('figures');
    expect(found.length).toBeGreaterThan(4);
    for (const { text, page } of found) {
      const [number] = /^Figure (A1|\d+)-\d+/.exec(text)!;
      expect(pageText(student, page), `${number} on page ${page}`).toContain(number);
    }
  });

  it('has an index whose pages have the term', () => {
    const start = html.indexOf('<ul class="index-list">');
    const items = [...html.slice(start).matchAll(/<li>([\s\S]*?)<\/li>/g)].map(([, item]) => wordsOf(item!));
    expect(items.length).toBeGreaterThan(15);
    let looked = 0;
    for (const item of items) {
      const entry = terms.find(({ term }) => item.startsWith(`${term} `))!;
      const forms = [entry.term, ...(entry.also ?? [])].map((form) => form.toLowerCase());
      for (const [, from, to = from] of item.slice(entry.term.length).matchAll(/(\d+)(?:–(\d+))?/g)) {
        for (let page = Number(from); page <= Number(to); page += 1) {
          const text = pageText(student, page).toLowerCase().replace(/\s+/g, ' ');
          expect(
            forms.some((form) => text.includes(form)),
            `${item}: page ${page}`,
          ).toBe(true);
        }
      }
      looked += 1;
    }
    expect(looked).toBe(items.length);
  });

  it('says of each standard in which chapter it is taught, and where it is graded', async () => {
    const rows = tableRows(html, /class="coverage"/).filter((cells) => cells.length === 3);
    const lesson = await school.text('lessons/power-off-90.md');
    const standards = /:::standards\n([\s\S]*?)\n:::/.exec(lesson)![1]!.match(/^- /gm)!.length;
    const ofChapter = rows.filter(([, taught]) => /^chapter\s2,/.test(taught!));
    expect(ofChapter.length).toBe(standards);
    for (const [, taught, graded] of ofChapter) {
      const page = (cell: string) => pageText(student, Number(/page\s(\d+)/.exec(cell)![1]));
      expect(page(taught!)).toContain('The 90° power-off approach');
      expect(page(graded!)).toContain('Completion standards: tick one on each line');
    }
  });

  it('has the same words on the same pages in both editions, but for notes and answers', () => {
    expect(instructor.pages.length).toBe(student.pages.length);
    expect(instructor.bookmarks).toEqual(student.bookmarks);
    for (const [at, page] of student.pages.entries()) {
      const words = new Set(
        instructor.pages[at]!.words.map(({ text, x, y }) => `${x.toFixed(1)} ${y.toFixed(1)} ${text}`),
      );
      const missing = page.words
        .filter(({ text, x, y }) => !words.has(`${x.toFixed(1)} ${y.toFixed(1)} ${text}`))
        .filter(({ text }) => !/edition|inputs/.test(text));
      expect(missing, `page ${at + 1}`).toEqual([]);
    }
  });

  it('names the chapter and its wind at the head of each of its pages', () => {
    const second = entries('contents').find(({ text }) => text.startsWith('2 '))!;
    const after = pageText(student, second.page + 1);
    expect(after).toContain('2 The 90° power-off approach');
    expect(after).toContain('Osier 15 · Fallow Reach 24 · wind 230° 7 kt');
    expect(after).toContain(`Page ${second.page + 1} of ${student.pages.length}`);
  });

  it('works out each plan once, and says for which chapters', () => {
    expect(wordsOf(html)).toMatch(/For the aircraft's own pages, at Fallow Reach, runway 24\./);
    expect(wordsOf(html)).toMatch(/For chapter 1, at Fallow Reach, runway 24\./);
    expect(wordsOf(html)).toMatch(/For chapter 2, at Fallow Reach, runway 24\./);
  });

  it('has no id twice and no link that leads nowhere', () => {
    const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id!);
    expect(new Set(ids).size).toBe(ids.length);
    const links = [...html.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id!);
    expect(links.filter((id) => !ids.includes(id))).toEqual([]);
  });
});

describe('one volume for the fleet', () => {
  it('has the chapters of each aircraft, numbered on', () => {
    expect({ code: fleet.code, err: beside(fleet.err) }).toEqual({ code: 0, err: '' });
    const chapters = volume.bookmarks.filter((title) => /^(\d |Osier|Withy)/.test(title));
    expect(chapters.slice(0, 3)).toEqual(['Osier 15', '1 Judging the glide', '2 The 90° power-off approach']);
    expect(chapters.slice(3, 6)).toEqual(['Withy 80', '3 Judging the glide', '4 The 90° power-off approach']);
  });
});

describe('a book in which nothing has changed', () => {
  const noBrowser = ['--browser', 'no/browser'];

  it('is not printed again, and no browser is started', async () => {
    const pdf = () => school.read('dist/handbook/osier-15.instructor.pdf');
    const before = await pdf();
    const { code, out, err } = await bind(['--edition', 'both', ...noBrowser]);
    expect({ code, out, err }).toEqual({
      code: 0,
      out: '2 books stand as they were: nothing in them has changed.\n',
      err: '',
    });
    expect(await pdf()).toEqual(before);
  });

  it('is printed again for another wind, aircraft or word, but not for a lesson that is no chapter of it', async () => {
    const isUnchanged = async (...args: readonly string[]) => {
      const ran = await bind([...args, ...noBrowser, '--out', 'dist/other']);
      return { code: ran.code, isUnchanged: /stands as it was/.test(ran.out) };
    };
    expect((await bind(['--out', 'dist/other'])).code).toBe(0);
    const edit = async (name: string, from: string | RegExp, to: string) => {
      const own = await school.text(name);
      expect(own.replace(from, to)).not.toBe(own);
      await school.write(name, own.replace(from, to));
      const ran = await isUnchanged();
      await school.write(name, own);
      return ran.isUnchanged;
    };
    expect(await edit('lessons/steep-approach.md', /$/, '\nMore.\n')).toBe(true);
    expect(await edit('lessons/fleet/withy-80.yaml', /^name: .*$/m, 'name: Withy 81')).toBe(true);
    expect(await isUnchanged()).toEqual({ code: 0, isUnchanged: true });
    expect(await edit('lessons/power-off-90.md', /$/, '\nMore.\n')).toBe(false);
    expect((await bind(['--out', 'dist/other'])).code).toBe(0);
    expect(await edit('lessons/fleet/osier-15.yaml', /^name: .*$/m, 'name: Osier 16')).toBe(false);
    expect((await bind(['--out', 'dist/other'])).code).toBe(0);
    expect(await isUnchanged('--wind', '200/5kt')).toEqual({ code: 4, isUnchanged: false });
  });

  it('has the message of a lesson once, however many volumes and editions it stands in', async () => {
    const lesson = await school.text('lessons/power-off-90.md');
    await school.write('lessons/power-off-90.md', `${lesson}\n\nAn <b>old</b> tag.\n`);
    const both = ['--edition', 'both', '--aircraft', 'osier-15', 'sallow-10', '--out', 'dist/noted'];
    const { err } = await bind([...both, ...noBrowser]);
    await school.write('lessons/power-off-90.md', lesson);
    expect(err.match(/HTML/g)).toHaveLength(new Set(err.match(/^\d+:\d+.*HTML.*$/gm)).size);
    expect(err).toMatch(/HTML/);
  });
});

describe('a book without a browser', () => {
  it('is written as HTML, its page numbers left out, and the exit code says that the PDF is missing', async () => {
    const { code, err } = await bind(['--browser', 'no/browser', '--out', 'dist/bare']);
    expect(code).toBe(4);
    expect(err).toMatch(/browser/);
    expect(wordsOf(await school.text('dist/bare/osier-15.html'))).toContain('Glossary');
  });
});

describe('a book that cannot be bound', () => {
  it('leaves the earlier one as it is, and says what is wrong with which lesson', async () => {
    const before = await school.read('dist/handbook/osier-15.pdf');
    const lesson = await school.text('lessons/power-off-90.md');
    await school.write('lessons/power-off-90.md', `${lesson}\n\n::keyz\n`);
    const { code, err } = await bind([]);
    await school.write('lessons/power-off-90.md', lesson);
    expect(code).toBe(1);
    expect(err).toMatch(/power-off-90\.md/);
    expect(err).toMatch(/`keyz`/);
    expect(err).toMatch(/not printed/);
    expect(await school.read('dist/handbook/osier-15.pdf')).toEqual(before);
  });

  it('says which aircraft there are, and what to type', async () => {
    const { code, err } = await bind(['--aircraft', 'osier']);
    expect(code).toBe(1);
    expect(err).toMatch(/no aircraft `osier`.*`osier-15`/);
  });
});
