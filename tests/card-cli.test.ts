import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Approach } from '../src/flight/plan.ts';
import type { CardPaperName } from '../src/press/card/card-paper.ts';
import { fitCard } from '../src/press/card/fit-card.ts';
import { makeCard } from '../src/press/card/make-card.ts';
import { findBrowser } from '../src/press/find-browser.ts';
import { withPrinter } from '../src/press/print-pdf.ts';
import { readSchool } from '../src/school/read.ts';
import { parseWind } from '../src/units/wind-text.ts';
import {
  day,
  lessonOf,
  openTrialSchool,
  plain,
  type TrialSchool,
  tableRows,
  wordsOf,
} from './packet-school.ts';
import { readPdf } from './pdf-reader.ts';

let school: TrialSchool;
beforeAll(async () => {
  school = await openTrialSchool();
});
afterAll(() => school.remove());

const card = (...args: readonly string[]) => school.run(['card', '--date', day, ...args]);
/** The HTML alone: exit code 4, no browser. */
const cardHtml = (...args: readonly string[]) => card(...args, '--browser', `${school.folder}/no-browser`);
const cards = 'dist/packets/cards';
const html = (name: string) => school.text(`${cards}/${name}.html`);
/** ISO 216 and half of ANSI/ASME Y14.1 A, mm. */
const papers = { A5: [148, 210], 'half-letter': [139.7, 215.9] } as const;
const aircraft = ['osier-15', 'sallow-10', 'withy-80'];

/** Printed by one browser, in this process: starting one for each card would take minutes. */
async function printed(paper: CardPaperName, approach: Approach, wind: string) {
  const { value } = await readSchool(`${school.folder}/lessons`);
  return withPrinter(await findBrowser({}), async (printer) => {
    const pages = [];
    for (const aircraftId of aircraft) {
      const choices = { wind: parseWind(wind) };
      const input = makeCard({
        ...{ school: value!, aircraftId, approach, choices, paper },
        ...{ date: new Date(day), version: '0' },
      });
      const trial = (html: string) => printer.print(html, input);
      const { pdf, html, setting } = await fitCard(trial, input);
      pages.push({ ...(await readPdf(pdf!)), html, setting });
    }
    return pages;
  });
}

describe('chalkwing card', () => {
  const asked: readonly (readonly [CardPaperName, Approach, string])[] = [
    ['A5', '180', '210/12kt'],
    ['A5', '180', 'calm'],
    ['half-letter', '180', '210/12kt'],
    ['half-letter', '180', 'calm'],
    ['half-letter', '180', '290/10kt'],
    ['half-letter', '90', '210/12kt'],
    ['half-letter', '360', '210/12kt'],
    ['half-letter', 'spiral', '210/12kt'],
  ];
  it.each(asked)('is one page of %s for every aircraft: a %s in wind %s', async (...of) => {
    const [width, height] = papers[of[0]];
    for (const { pages, tagged, language, html, setting } of await printed(...of)) {
      expect(pages).toHaveLength(1);
      expect(Math.abs(pages[0]!.width - width)).toBeLessThan(0.5);
      expect(Math.abs(pages[0]!.height - height)).toBeLessThan(0.5);
      expect({ tagged, language }).toEqual({ tagged: true, language: 'en' });
      // The last words of the foot, read last: nothing was cut on the way to them.
      expect(plain(pages[0]!.text)).toMatch(/inputs [\da-f]{8}$/);
      // Common practice for what is read in flight, no source: 11 pt and more, the heights at the keys 16 pt and more.
      expect(setting.size).toBeGreaterThanOrEqual(11);
      expect(html).toContain(`html{font:${setting.size}pt`);
      const key = Number(/\.key-height \.figure\{font-size:([\d.]+)rem/.exec(html)![1]);
      expect(setting.size * key).toBeGreaterThanOrEqual(16);
      expect([...html.matchAll(/font-size:0?\.\d+r?em/g)]).toEqual([]);
    }
  });

  it('has the figures that a packet has for the same setting', async () => {
    const directives = ['::keys', '::gates', '::kneeboard', '::turns{banks=30deg}', '::wind-table'];
    await school.write('lessons/trial.md', lessonOf(directives.join('\n\n')));
    const setting = [
      '--wind',
      '190/9kt',
      '--temperature',
      '24C',
      '--qnh',
      '1004hPa',
      '--aircraft',
      ...aircraft,
    ];
    await school.buildHtml(['trial', ...setting]);
    expect(await cardHtml('--paper', 'A5', ...setting)).toMatchObject({ code: 4 });
    for (const id of aircraft) {
      const packet = await school.text(`dist/packets/trial/${id}.html`);
      const page = await html(`${id}-fallow-reach-24-180.A5`);
      const keys = tableRows(page, /"keys"/);
      const flown = tableRows(packet, /class="keys"/).filter(([key]) => !/Aim|Touch/.test(key!));
      expect(keys.map((row) => [row[0], row[1], row.at(-1)])).toEqual(
        flown.map(([key, height, , time]) => [key, height, time]),
      );
      const gates = tableRows(packet, /class="gates"/);
      expect(gates.length).toBeGreaterThan(2);
      for (const [key, low, , high] of gates) {
        const edges = [low, high].map((edge) => (edge === '–' ? 'the plan' : edge));
        expect(keys.find(([name]) => name === key)!.slice(2, 4)).toEqual(edges);
      }

      const [seconds, heights] = tableRows(page, /"winds"/).map(([, ...cells]) => cells);
      const byWind = tableRows(packet, /by headwind/).map(([, figure]) => figure!);
      expect(byWind.length).toBe(4);
      expect(seconds!.slice(0, 4).map((each) => (each === '✕' ? 'not sound' : `${each} s`))).toEqual(byWind);
      const table = tableRows(packet, /class="wind-table"/);
      expect(table.map((row) => row[3])).toEqual(
        table.map((row, i) => (heights![i] === '✕' ? row[3] : `${heights![i]} ft`)),
      );

      const [, , , half, , whole, , stall] = tableRows(packet, /class="turns"/)[0]!;
      expect(tableRows(page, /"turns"/)[0]!.slice(2)).toEqual([half, whole, stall]);
      const words = wordsOf(page);
      const speed = (name: string) => new RegExp(`${name} ?(\\d+ kt)`).exec(words)![1];
      const glide = /Glide (\d+ kt) , approach (\d+ kt)|Glide (\d+ kt), approach (\d+ kt)/.exec(
        wordsOf(packet),
      )!;
      expect([speed('Best glide'), speed('Approach')]).toEqual(glide.slice(1).filter(Boolean));
    }
  });

  it('has a column for every round headwind up to the limit of the aircraft', async () => {
    await cardHtml('--paper', 'A5');
    const heads = async (id: string) => {
      const table = /<table[^>]*"winds"[\s\S]*?<\/table>/.exec(
        await html(`${id}-fallow-reach-24-180.A5`),
      )![0];
      return [...table.matchAll(/<th scope="col" class="number">(\d+)</g)].map(([, head]) => Number(head));
    };
    // Their limits: 18, 15 and 25 kt.
    expect(await heads('osier-15')).toEqual([0, 5, 10, 15]);
    expect(await heads('sallow-10')).toEqual([0, 5, 10, 15]);
    expect(await heads('withy-80')).toEqual([0, 5, 10, 15, 20, 25]);
  });

  it('warns of what the flight itself showed, and has no figure for such a wind', async () => {
    await cardHtml('--wind', 'calm', '--aircraft', 'withy-80');
    const words = wordsOf(await html('withy-80-fallow-reach-24-180.A5'));
    expect(words).toMatch(
      /Beware\. ?The turn to final is complete at \d+ ft; it should be complete at 300 ft/,
    );
    expect(words).toMatch(/✕ not sound in that wind as planned/);
    expect(words).toContain('Training material; it does not replace instruction.');
    expect(words).toContain('Invented for the demonstration.');
  });

  it('has the whole engine-failure list; without one it says so, and where to write it', async () => {
    await cardHtml('--aircraft', 'osier-15');
    const list = wordsOf(await html('osier-15-fallow-reach-24-180.A5'));
    const file = await school.text('lessons/fleet/osier-15.yaml');
    const lines = [...file.matchAll(/^ {2}- "(.*)"$/gm)].map(([, line]) => line!);
    expect(lines.length).toBe(6);
    for (const line of lines) expect(list.replaceAll(' :', ':')).toContain(line);

    await school.write('lessons/fleet/bare.yaml', file.slice(0, file.indexOf('engine-failure:')));
    const { code, err } = await cardHtml('--aircraft', 'bare');
    expect(code).toBe(4);
    expect(plain(err)).toContain(
      'fleet/bare.yaml: Osier 15 has no engine-failure list, and its card says so',
    );
    expect(err).toContain('`engine-failure`');
    expect(wordsOf(await html('bare-fallow-reach-24-180.A5'))).toContain(
      'No engine-failure list in its file.',
    );
  });

  it('refuses what does not fit one page, and leaves the earlier card', async () => {
    const name = `${cards}/osier-15-fallow-reach-24-180.A5.html`;
    await card('--aircraft', 'osier-15');
    const before = await school.text(name);
    const file = await school.text('lessons/fleet/osier-15.yaml');
    const long = Array.from(
      { length: 12 },
      (_, i) => `  - "Line ${i}: ${'a word and another '.repeat(5)}."\n`,
    );
    await school.write('lessons/fleet/osier-15.yaml', `${file}${long.join('')}`);
    const { code, err } = await card('--aircraft', 'osier-15');
    expect(code).toBe(1);
    expect(err).toMatch(/more than one page of A5 with its text at 11 pt.*shorten the engine-failure list/);
    expect(await school.text(name)).toBe(before);
    await school.write('lessons/fleet/osier-15.yaml', file);
  });

  it('says by option what cannot be made a card of', async () => {
    const wrong = await card('--runway', '42', '--aircraft', 'osier-51');
    expect(wrong.code).toBe(1);
    expect(wrong.err).toMatch(/^--aircraft osier-51: The school has no aircraft `osier-51`/);
    expect((await card('--runway', '42')).err).toMatch(/^--runway 42: Fallow Reach has no runway `42`/);
    expect((await card('--wind', '238/40kt', '--aircraft', 'osier-15')).err).toMatch(/^--wind/);
    expect((await card('--wind', '12')).code).toBe(2);
  });

  it('is the same for the same inputs', async () => {
    const once = async () => {
      await card('--aircraft', 'sallow-10');
      return school.read(`${cards}/sallow-10-fallow-reach-24-180.A5.pdf`);
    };
    expect((await once()).equals(await once())).toBe(true);
  });
});
