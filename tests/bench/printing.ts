import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import puppeteer from 'puppeteer-core';
import { bindVolume, openBook } from '../../src/press/book/book-order.ts';
import { findPages } from '../../src/press/book/find-pages.ts';
import { documentHtml } from '../../src/press/formats/document-html.ts';
import type { PageDocument } from '../../src/press/formats/page-document.ts';
import { buildLesson } from '../../src/press/packet/build.ts';
import { papers } from '../../src/press/paper/paper.ts';
import { findBrowser } from '../../src/press/printing/find-browser.ts';
import { printAll } from '../../src/press/printing/print-all.ts';
import { withPrinter } from '../../src/press/printing/print-pdf.ts';
import { readSchool } from '../../src/school/read.ts';
import { median } from './measure.ts';
import { type Line, outcome } from './table.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const date = new Date('2031-05-06T00:00:00Z');
const aircraft = 'osier-15';
const rounds = 5;
/** In times of the bare browser. */
const most = { packet: 1.15, book: 2.2 };
/** In times of a packet among ten, for one among eighty. */
const mostOfMany = 1.15;
/** As a share of a cold build. */
const mostUnchanged = 0.1;

/** What printing costs compared with the bare browser printing the same finished HTML, and what a second build costs. */
export async function printing(): Promise<Line[]> {
  const { value: school } = await readSchool(join(root, 'lessons'));
  const common = { choices: {}, asked: {}, paper: 'A4' as const, date, version: 'bench' };
  const { packets } = await buildLesson({
    ...common,
    school: school!,
    lesson: 'power-off-180',
    aircraft: [aircraft],
    editions: ['student'],
  });
  const { document } = packets[0]!;
  const packet = documentHtml(document);
  const { title, chapters } = school!.handbook!;
  const book = (await bindVolume(
    await openBook({ ...common, school: school!, title, common: {} }, chapters),
    { path: 'book', aircraft: [aircraft], edition: 'student', paper: 'A4', refused: () => undefined },
  ))!;
  const how = { paper: papers.A4, date };
  return withPrinter(await findBrowser(), async ({ print }) => {
    const bare = await bareBrowser();
    try {
      const twice = async () => {
        const draft = await print(documentHtml(book.document()), { ...how, draft: true });
        return documentHtml(book.document(await findPages(draft)));
      };
      const twoPass = async () => {
        await print(await twice(), how);
      };
      const finished = await twice();
      const [barePacket, ourPacket] = await asyncTurns(
        [() => bare.print(packet), () => print(packet, how)],
        rounds,
      );
      const [bareBook, ourBook] = await asyncTurns([() => bare.print(finished), twoPass], 3);
      return [
        ratio('a packet printed, over the bare browser', ourPacket!, barePacket!, most.packet),
        ratio('a book with its page numbers, over one bare print', ourBook!, bareBook!, most.book),
        ...(await many(document)),
        ...unchanged(),
      ];
    } finally {
      await bare.close();
    }
  });
}

function ratio(what: string, ours: number, theirs: number, target: number): Line {
  const remark = `${ours.toFixed(0)} ms against ${theirs.toFixed(0)} ms`;
  return [
    what,
    (ours / theirs).toFixed(2),
    `${remark}; ${outcome(`at most ${target}`, ours <= target * theirs)}`,
  ];
}

async function asyncTurns(works: readonly (() => Promise<unknown>)[], times: number): Promise<number[]> {
  const taken: number[][] = works.map(() => []);
  for (let round = 0; round <= times; round++) {
    for (const [at, work] of works.entries()) {
      const start = performance.now();
      await work();
      // The first is the warm-up.
      if (round > 0) taken[at]!.push(performance.now() - start);
    }
  }
  return taken.map(median);
}

/** The same browser with nothing of ours in between. */
async function bareBrowser() {
  const found = await findBrowser();
  const browser = await puppeteer.launch({
    executablePath: found.path,
    headless: 'shell',
    pipe: true,
    env: { ...process.env, ...found.environment },
    args: ['--no-sandbox', '--no-zygote', '--disable-gpu', '--font-render-hinting=none'],
    protocolTimeout: 600_000,
  });
  const page = await browser.newPage();
  return {
    print: async (html: string) => {
      await page.setContent(html, { waitUntil: 'load' });
      return page.pdf({
        preferCSSPageSize: true,
        printBackground: true,
        tagged: true,
        outline: true,
        timeout: 600_000,
      });
    },
    close: () => browser.close(),
  };
}

/** Ten packets and eighty. */
async function many(document: PageDocument): Promise<Line[]> {
  const out = mkdtempSync(join(tmpdir(), 'chalkwing-bench-'));
  try {
    const cost = async (count: number) => {
      const pages = Array.from({ length: count }, (_, at) => ({
        path: `many/packet-${at}`,
        document,
      }));
      globalThis.gc?.();
      const start = performance.now();
      await printAll(pages, { out });
      globalThis.gc?.();
      return { each: (performance.now() - start) / count, memory: process.memoryUsage().heapUsed };
    };
    await cost(2);
    const [ten, eighty] = [await cost(10), await cost(80)];
    const grown = (eighty.memory - ten.memory) / 1e6;
    return [
      ratio('a packet among 80, over one among 10', eighty.each, ten.each, mostOfMany),
      ['  heap kept after 80 more than after 10', `${grown.toFixed(1)} MB`, outcome('under 5 MB', grown < 5)],
    ];
  } finally {
    rmSync(out, { recursive: true });
  }
}

/** The demonstration's packets for one aircraft, built cold and then again with nothing changed, as an instructor would. */
function unchanged(): Line[] {
  const out = mkdtempSync(join(tmpdir(), 'chalkwing-bench-'));
  try {
    const build = () => {
      const start = performance.now();
      const command = [join(root, 'src/cli/chalkwing.js'), 'build', '--out', out];
      const { status, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
      if (status !== 0) throw new Error(stderr);
      return performance.now() - start;
    };
    const [cold, again] = [build(), build()];
    return [ratio('the unchanged book, over the cold build', again, cold, mostUnchanged)];
  } finally {
    rmSync(out, { recursive: true });
  }
}
