import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Printer } from '../src/press/printing/print-pdf.ts';
import { type HandbookPacket, handbookPackets } from './handbook-packets.ts';
import { type ReadPdf, type ReadTag, readPdf } from './pdf-reader.ts';
import { openSharedPrinter } from './screen.ts';

/*
 * What a screen reader gets from a printed packet: ISO 32000-1, 14.7 and 14.8 (structure, tagged PDF), and what ISO
 * 14289-1 (PDF/UA-1) asks for beyond that, as far as a test can judge it.
 */

/** Together they have the three aircraft and both editions. */
const lessons = ['judging-the-glide', 'power-off-90', 'power-off-180', 'faulty-landings'];

interface Printed extends HandbookPacket {
  readonly pdf: ReadPdf;
  readonly bytes: string;
}

let printer: Printer | undefined;
let printed: readonly Printed[];

beforeAll(async () => {
  printer = await openSharedPrinter();
  const all: Printed[] = [];
  for (const packet of await handbookPackets(lessons)) {
    const { html, document } = packet;
    const bytes = await printer.print(html, document);
    all.push({ ...packet, pdf: await readPdf(bytes), bytes: Buffer.from(bytes).toString('latin1') });
  }
  printed = all;
});
afterAll(() => printer?.close());

const each = it.each(lessons.map((lesson) => [lesson] as const));
const packetOf = (lesson: string) => printed.find((packet) => packet.lesson === lesson)!;

const headingPattern = /<h([1-6])\b[^>]*>([\s\S]*?)<\/h\1>/g;

/** The words of the headings of a packet, in order. */
function headingsOf(html: string): string[] {
  return [...html.matchAll(headingPattern)].map(([, , inner]) =>
    inner!
      .replace(/<[^>]*>/g, '')
      .replace(/&#x([\da-f]+);/gi, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
      .replace(/\s+/g, ' ')
      .trim(),
  );
}

function allTags(tags: readonly ReadTag[]): ReadTag[] {
  return tags.flatMap((tag) => [tag, ...allTags(tag.children)]);
}

const tagsOf = ({ pdf }: Printed) => pdf.pages.flatMap(({ tags }) => allTags(tags));
const within = (tag: ReadTag, role: string) => allTags(tag.children).filter((inner) => inner.role === role);
const closed = (text: string) => text.replace(/\s+/g, '');

describe('the catalogue of a printed packet', () => {
  each('of %s says that it is tagged, its language and its title', (lesson) => {
    const { pdf, bytes, html } = packetOf(lesson);
    expect(pdf.tagged).toBe(true);
    expect(pdf.language).toBe('en');
    expect(html).toContain(`<title>${pdf.title}</title>`);
    // ISO 14289-1, 7.1: a viewer shows the title, not the name of the file.
    expect(bytes).toMatch(/\/DisplayDocTitle true/);
  });

  each('of %s has a bookmark for every heading, in its words', (lesson) => {
    const { pdf, html } = packetOf(lesson);
    expect(pdf.bookmarks.length).toBeGreaterThan(15);
    expect(pdf.bookmarks).toEqual(headingsOf(html));
  });
});

describe('the headings of a printed packet', () => {
  each('of %s are tagged in the order of the page, none of them skipping a level', (lesson) => {
    const packet = packetOf(lesson);
    // A heading that opens a page is drawn on the page before it too, beyond its edge: a second part without words.
    const headings = tagsOf(packet).filter(({ role, text }) => /^H\d$/.test(role) && text !== '');
    const levels = headings.map(({ role }) => Number(role[1]));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [index, level] of levels.entries())
      if (index > 0) expect(level - levels[index - 1]!, headings[index]!.text).toBeLessThanOrEqual(1);
    expect(headings.map(({ text }) => closed(text))).toEqual(headingsOf(packet.html).map(closed));
  });
});

describe('the tables of a printed packet', () => {
  each('of %s are rows of cells, with header cells', (lesson) => {
    const tables = tagsOf(packetOf(lesson)).filter(({ role }) => role === 'Table');
    expect(tables.length).toBeGreaterThan(5);
    for (const table of tables) {
      const rows = within(table, 'TR');
      expect(rows.length, table.text).toBeGreaterThan(0);
      for (const row of rows) expect(row.children.map(({ role }) => role).join(' ')).toMatch(/^(T[HD] ?)+$/);
      const heads = within(table, 'TH');
      expect(heads.length, table.text).toBeGreaterThan(0);
      expect(
        heads.some(({ text }) => text.trim() !== ''),
        table.text,
      ).toBe(true);
    }
  });

  each('of %s say of every header cell what it heads (ISO 14289-1, 7.5)', (lesson) => {
    const { bytes } = packetOf(lesson);
    const heads = bytes.split('endobj').filter((object) => /\/S \/TH\b/.test(object));
    expect(heads.length).toBeGreaterThan(30);
    for (const head of heads) expect(head).toMatch(/\/Scope \/(Column|Row|Both)\b/);
  });
});

describe('the drawings of a printed packet', () => {
  // A height, a length or a distance, as a reader who cannot see the drawing hears it.
  const figureWithUnit = /\d\s?(ft|m|km|NM|°)(?![\p{L}\d])/u;

  each('of %s each have an alternative text with heights and distances in figures', (lesson) => {
    const { html, ...packet } = packetOf(lesson);
    const drawings = tagsOf({ ...packet, html }).filter(
      ({ role, alternative }) => role === 'Figure' && alternative !== undefined,
    );
    expect(drawings).toHaveLength([...html.matchAll(/<svg\b[^>]*role="img"/g)].length);
    expect(drawings.length).toBeGreaterThan(0);
    for (const { alternative } of drawings) {
      expect(alternative!.length).toBeGreaterThan(100);
      expect(alternative).toMatch(figureWithUnit);
      expect(alternative!.match(/\d\s?(ft|m|km|NM)(?![\p{L}\d])/gu)?.length ?? 0).toBeGreaterThan(1);
    }
  });

  each('of %s are never a figure without words', (lesson) => {
    const figures = tagsOf(packetOf(lesson)).filter(({ role }) => role === 'Figure');
    expect(figures.length).toBeGreaterThan(0);
    expect(figures.filter(({ alternative }) => !alternative?.trim())).toEqual([]);
  });
});

describe('the lists of a printed packet', () => {
  each('of %s are lists of items', (lesson) => {
    const packet = packetOf(lesson);
    const lists = tagsOf(packet).filter(({ role }) => role === 'L');
    expect(lists.length).toBeGreaterThanOrEqual(10);
    for (const list of lists) {
      const items = list.children.filter(({ role }) => role === 'LI');
      expect(items.length, list.text).toBeGreaterThan(0);
      for (const item of items) expect(item.text.trim()).not.toBe('');
    }
  });
});

describe('the fonts of a printed packet', () => {
  each('of %s are all in the file, on every page', (lesson) => {
    for (const { fonts } of packetOf(lesson).pdf.pages) {
      expect(fonts.length).toBeGreaterThan(0);
      for (const font of fonts) {
        expect(font.embedded, font.name).toBe(true);
        expect(font.name).toMatch(/^[A-Z]{6}\+IBMPlex/);
        expect(font.type).not.toBe('Type3');
      }
    }
  });
});
