import type { ElementContent } from 'hast';
import { h, s } from 'hastscript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planApproach } from '../src/flight/plan/planner.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { packetDocument } from '../src/press/packet/packet.ts';
import { type PaperName, papers } from '../src/press/paper/paper.ts';
import type { Printer } from '../src/press/printing/print-pdf.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';
import { sampleRequest } from './press-sample.ts';
import { openSharedPrinter } from './screen.ts';

let printer: Printer;
const read = new Map<PaperName, ReadPdf>();
const filler = 'The throttle closes abeam the spot. Hold the glide speed before anything else. '.repeat(8);
const scale = s(
  'svg',
  { width: 657, height: 38, viewBox: '0 0 173.83 10.05', role: 'img', ariaLabel: 'Scale' },
  s('path', { d: 'M20 5H120', stroke: '#000', strokeWidth: 0.3 }),
);
const body: ElementContent[] = [
  h('h2', 'Objective'),
  h('p', 'To land at the spot.'),
  ...Array.from({ length: 12 }, (_, index) => [
    h('h2', { id: `part-${index}` }, `Part ${index + 1}`),
    h('aside', { class: 'note' }, `Note ${index + 1}`),
    h('p', filler),
  ]).flat(),
  h('figure', [scale, h('figcaption', 'A hundred millimetres')]),
];

beforeAll(async () => {
  printer = await openSharedPrinter();
  const date = new Date('2031-05-06T00:00:00Z');
  for (const paper of [papers.A4, papers.Letter]) {
    const document = packetDocument({
      title: 'Power off',
      body,
      edition: 'student',
      plan: planApproach(sampleRequest),
      request: sampleRequest,
      school: { name: 'A school', cautions: [] },
      rules: [],
      units: { height: 'ft', distance: 'm', speed: 'kt' },
      paper,
      date,
      fingerprint: 'abcd1234',
    });
    read.set(paper.name, await readPdf(await printer.print(documentHtml(document), { paper, date })));
  }
});
afterAll(async () => {
  await printer.close();
});

describe.each(['A4', 'Letter'] as const)('a packet printed on %s', (paper) => {
  it('is tagged, titled, in English, with bookmarks from its headings', () => {
    const pdf = read.get(paper)!;
    expect(pdf).toMatchObject({ tagged: true, language: 'en' });
    expect(pdf.title).toContain('Power off — Osier 15');
    expect(pdf.bookmarks).toEqual(
      expect.arrayContaining(['Power off', 'Cautions', 'Part 12', 'How the figures were worked out']),
    );
  });

  it('has a running title on every page but the first, and page numbers, date and fingerprint on all', () => {
    const { pages } = read.get(paper)!;
    expect(pages.length).toBeGreaterThan(4);
    for (const [index, { text, words, height }] of pages.entries()) {
      expect(text).toContain(`Page ${index + 1} of ${pages.length}`);
      expect(text).toContain('edition · 2031-05-06 · inputs abcd1234');
      const head = words
        .filter(({ y }) => y < 16)
        .map((word) => word.text)
        .join(' ');
      if (index === 0) expect(head).toBe('');
      else expect(head).toMatch(/Power off/);
      if (index > 0) expect(head).toMatch(/Osier 15 · Fallow Reach 24 · wind 210°\s12\skt/);
      expect(Math.max(...words.map(({ y }) => y))).toBeLessThan(height - 8);
    }
  });

  it('mirrors its margins for printing on both sides', () => {
    const { pages } = read.get(paper)!;
    const left = (index: number) => Math.min(...pages[index]!.words.map(({ x }) => x));
    expect(left(1)).toBeCloseTo(papers[paper].margin.outer, 0);
    expect(left(2)).toBeCloseTo(papers[paper].margin.inner, 0);
  });

  it('leaves no heading stranded at the foot of a page', () => {
    for (const { words, height } of read.get(paper)!.pages) {
      const lines = words.filter(({ y }) => y > 18 && y < height - 18).sort((a, b) => a.y - b.y);
      expect(lines.at(-1)?.text).not.toMatch(/^Part \d+$/);
    }
  });

  it('is to scale within 0.5 %: nothing has shrunk it', () => {
    const page = read.get(paper)!.pages.find(({ text }) => text.includes('A hundred millimetres'))!;
    const lines = page.segments.filter(({ length }) => Math.abs(length - 100) < 5);
    expect(lines.length).toBeGreaterThan(0);
    for (const { length } of lines) expect(Math.abs(length - 100)).toBeLessThan(0.5);
  });

  it('has its fonts inside', () => {
    const fonts = read.get(paper)!.pages.flatMap((page) => page.fonts);
    expect(new Set(fonts.map(({ name }) => name.slice(7)))).toEqual(
      new Set(['IBMPlexSans', 'IBMPlexSans-SmBld', 'IBMPlexSerif-Regular', 'IBMPlexSerif-Italic']),
    );
    expect(fonts.every(({ embedded, type }) => embedded && type !== 'Type3')).toBe(true);
  });
});
