import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { published } from '../src/checks/published.ts';
import { readHandbooks } from '../src/school/read.ts';
import { type ReadPdf, readPdf } from './pdf-reader.ts';

const root = new URL('..', import.meta.url).pathname;

describe('chalkwing checks', () => {
  let out: string;
  let ran: { code: number; out: string; err: string };
  let html: string;
  let pdf: ReadPdf;

  beforeAll(async () => {
    out = await mkdtemp(join(tmpdir(), 'chalkwing-checks-'));
    ran = await new Promise((resolve) => {
      execFile(
        process.execPath,
        ['src/cli/chalkwing.js', 'checks', '--out', out, '--paper', 'A4', '--date', '2026-11-25'],
        { cwd: root },
        (error, stdout, err) => resolve({ code: error ? Number(error.code) : 0, out: stdout, err }),
      );
    });
    html = await readFile(join(out, 'checks.html'), 'utf8');
    pdf = await readPdf(await readFile(join(out, 'checks.pdf')));
  });
  afterAll(() => rm(out, { recursive: true, force: true }));

  it('ends with exit code 0 and one line that counts the rows', () => {
    expect(ran).toMatchObject({ code: 0, err: '' });
    const [, ...rest] = ran.out.trim().split('\n');
    expect(rest).toHaveLength(1);
    expect(rest[0]).toMatch(
      /^(\d+) published rows \(\d+ read in the document, \d+ from memory\): \d+ agree, \d+ printed wrong and named, 0 disagree, \d+ trade figures, \d+ of which do not fit every aircraft; (\d+) of \2 flown checks agree$/,
    );
    expect(Number.parseInt(rest[0]!, 10)).toBe(published.length);
  });

  it('names every document, and says what was read and what is from memory', () => {
    const text = html.replaceAll('\u00a0', ' ');
    for (const { source } of published) expect(text.includes(source), source).toBe(true);
    expect(html.includes('read in the document or a reprint')).toBe(true);
    expect(html.includes('from memory, document not seen')).toBe(true);
    expect(html.includes('does not fit this aircraft')).toBe(true);
    expect(html.includes('DISAGREES')).toBe(false);
  });

  it('has a row for each element of the handbooks, with its lesson and heading or why it is left out', async () => {
    const { value } = (await readHandbooks(join(root, 'lessons')))!.value!;
    const rows = value!.handbooks.flatMap(({ elements }) => elements);
    const section = html.slice(html.indexOf('<table class="checks handbooks"'));
    const printed = [...section.matchAll(/<tr><td>(.*?)<\/td><td>(.*?)<\/td><td>(.*?)<\/td><\/tr>/g)];
    expect(printed).toHaveLength(rows.length);
    expect(rows.length).toBeGreaterThan(80);
    printed.forEach(([, , lesson, where], i) => {
      expect(lesson === 'left out').toBe(rows[i]!.lesson === undefined);
      expect(where!.length).toBeGreaterThan(3);
    });
    expect(section).toContain('<td>Porpoising</td><td>Landings that go wrong</td><td>On the wheels</td>');
  });

  it('is one file that asks for nothing else', () => {
    expect(/(?:src|href)="(?!#|data:)/.test(html)).toBe(false);
    expect(/url\((?!data:)/.test(html)).toBe(false);
  });

  it('is tagged, with bookmarks, and has the head of its table on every page that begins within one', () => {
    expect(pdf.tagged).toBe(true);
    expect(pdf.bookmarks).toEqual(
      expect.arrayContaining(['Published figures', 'Flown, beside the formula', 'The wind triangle']),
    );
    for (const page of pdf.pages) expect(page.text).toMatch(/Quantity|Aircraft|What the handbook teaches/);
  });

  it('sets every negative figure with a real minus', () => {
    const cells = [...html.matchAll(/<td class="number">([^<]*)<\/td>/g)].map(([, cell]) => cell!);
    expect(cells.length).toBeGreaterThan(600);
    expect(cells.filter((cell) => cell.includes('-'))).toEqual([]);
    expect(cells.some((cell) => cell.startsWith('−'))).toBe(true);
  });
});
