import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Edition } from '../components/context.ts';
import { bindVolume, openBook } from '../src/press/book/book-order.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { type PaperName, papers } from '../src/press/paper/paper.ts';
import type { Printer } from '../src/press/printing/print-pdf.ts';
import { readSchool } from '../src/school/read.ts';
import type { School } from '../src/school/school.ts';
import { type PageWords, readWords } from './pdf-reader.ts';
import { openSharedPrinter } from './screen.ts';

/** Every chapter of the school's book, for every aircraft, in both editions: on A4 and on Letter. */
const books: readonly (readonly [aircraft: string, paper: PaperName])[] = [
  ['osier-15', 'A4'],
  ['sallow-10', 'Letter'],
  ['withy-80', 'A4'],
];
const date = new Date('2031-05-06T00:00:00Z');

let school: School;
let printer: Printer;
beforeAll(async () => {
  school = (await readSchool(fileURLToPath(new URL('../lessons', import.meta.url)))).value!;
  printer = await openSharedPrinter();
});
afterAll(() => printer?.close());

async function printed(aircraft: string, paper: PaperName, edition: Edition): Promise<PageWords[]> {
  const { title, chapters } = school.handbook!;
  const source = { school, title, choices: {}, asked: {}, date, version: 'test', common: {} };
  const book = await bindVolume(await openBook(source, chapters), {
    path: 'book',
    aircraft: [aircraft],
    edition,
    paper,
    refused: () => undefined,
  });
  return readWords(
    await printer.print(documentHtml(book!.document()), { paper: papers[paper], date, draft: true }),
  );
}

/** Every word that both editions have, with its page and its place on it. */
function placedWords(pages: readonly PageWords[]): string[] {
  return pages.flatMap(({ words }, page) =>
    words
      .filter(({ text }) => !/edition|inputs/.test(text))
      .map(({ text, x, y }) => `${page + 1} ${x.toFixed(1)} ${y.toFixed(1)} ${text}`),
  );
}

describe.each(books)('the whole book for %s on %s', (aircraft, paper) => {
  it('has every heading, figure, table and word of the student at the same place of the same page for the instructor', async () => {
    const student = await printed(aircraft, paper, 'student');
    const instructor = await printed(aircraft, paper, 'instructor');
    expect(student.length).toBeGreaterThan(100);
    expect(instructor.length).toBe(student.length);
    const words = placedWords(student);
    const captions = words.filter((word) => /(Figure|Table)\s(\d+|A1)-\d/.test(word));
    expect(captions.length).toBeGreaterThan(60);
    const placed = new Set(placedWords(instructor));
    expect(words.filter((word) => !placed.has(word))).toEqual([]);
    expect(placed.size).toBeGreaterThan(new Set(words).size);
  });
});
