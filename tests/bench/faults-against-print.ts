import { fileURLToPath } from 'node:url';
import { VFile } from 'vfile';
import { components } from '../../components/list.ts';
import { parseLesson } from '../../src/lesson/parse-lesson.ts';
import { renderLesson } from '../../src/lesson/render-lesson.ts';
import { documentHtml } from '../../src/press/formats/document-html.ts';
import { buildLesson } from '../../src/press/packet/build.ts';
import { packetContext } from '../../src/press/packet/packet-context.ts';
import { planOf, scenarioOf } from '../../src/press/packet/scenario.ts';
import { papers } from '../../src/press/paper/paper.ts';
import { findBrowser } from '../../src/press/printing/find-browser.ts';
import { withPrinter } from '../../src/press/printing/print-pdf.ts';
import { readSchool } from '../../src/school/read.ts';
import { median } from './measure.ts';
import { type Line, outcome } from './table.ts';

const name = 'faulty-approaches';
const aircraft = 'osier-15';
/** As a share of the time that printing takes. */
const target = 0.5;
const rounds = 5;
/** m/s: what is remembered about a plan is not found again in a different wind. */
const otherWind = 1e-4;

const { value: school } = await readSchool(fileURLToPath(new URL('../../lessons', import.meta.url)));

/** All faults of a packet flown, with their recoveries, and drawn; compared with printing the whole packet. */
export async function faultsAgainstPrint(): Promise<Line[]> {
  const date = new Date('2031-05-06T00:00:00Z');
  const build = {
    school: school!,
    lesson: name,
    aircraft: [aircraft],
    editions: ['instructor' as const],
    paper: 'A4' as const,
    choices: {},
    asked: {},
    date,
    version: 'bench',
  };
  const { file, packets } = await buildLesson(build);
  const [packet] = packets;
  if (!packet) throw new Error(file.messages.join('\n'));
  const html = documentHtml(packet.document);
  const text = String(file.value);
  const ofPacket = text.split('\n').filter((line) => /^::faults\{|^::[\w-]+\{.*faults=/.test(line));
  if (ofPacket.length < 2) throw new Error(`${name} has no faults, or draws none`);
  const every = [...school!.faults.keys()].map((id) => `::faults{from=${id}}`);
  const works = [ofPacket, [...ofPacket, ...every]].map((body) => flown(body, text));

  return withPrinter(await findBrowser(), async ({ print }) => {
    const printing: number[] = [];
    const taken: number[][] = works.map(() => []);
    for (let round = 0; round <= rounds; round++) {
      const printed = await timed(() => print(html, packet.document));
      const times: number[] = [];
      for (const work of works) times.push(await timed(work(round)));
      // The first is the warm-up.
      if (round === 0) continue;
      printing.push(printed);
      times.forEach((time, i) => {
        taken[i]!.push(time);
      });
    }
    const print50 = median(printing);
    const line = (what: string, ms: number): Line => [
      what,
      `${(ms / print50).toFixed(2)}`,
      `${ms.toFixed(0)} ms; ${outcome(`under ${target}`, ms < target * print50)}`,
    ];
    const [own, all] = taken.map(median);
    return [
      [`printing ${name}`, `${print50.toFixed(0)} ms`, 'its PDF, the browser running'],
      line('  its faults, computed and drawn, over that', own!),
      line('  every fault of the school in it, over that', all!),
    ];
  });
}

/**
 * The work of flying and drawing what these directives ask for, with the lesson read and planned, in a wind that no
 * earlier round had.
 */
function flown(body: readonly string[], lesson: string): (round: number) => () => void {
  const head = lesson.slice(0, lesson.indexOf('\n---', 3) + 4);
  return (round) => {
    const file = new VFile({ path: `${name}.md`, value: `${head}\n\n${body.join('\n\n')}\n` });
    const parsed = parseLesson(file, components);
    const scenario = scenarioOf(school!, parsed.frontMatter!, aircraft, {});
    const { wind } = scenario.request;
    const request = {
      ...scenario.request,
      wind: { ...wind, speed: wind.speed + otherWind * (round + 100 * body.length) },
    };
    const flown = { request, plan: planOf({ ...scenario, request }) };
    const context = packetContext(school!, flown, 'instructor', papers.A4);
    return () => {
      renderLesson(parsed, context, file);
      if (file.messages.length > 0) throw new Error(file.messages.join('\n'));
    };
  };
}

async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}
