import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Approach } from '../src/flight/terms/approach.ts';
import { cardBody, cardDocument } from '../src/press/card/card.ts';
import type { CardPaperName } from '../src/press/card/card-paper.ts';
import { fitCard, settings } from '../src/press/card/fit-card.ts';
import { makeCard } from '../src/press/card/make-card.ts';
import { documentHtml } from '../src/press/formats/document-html.ts';
import type { PageDocument } from '../src/press/formats/page-document.ts';
import { buildLesson } from '../src/press/packet/build.ts';
import { findBrowser } from '../src/press/printing/find-browser.ts';
import { openPrinter, type Printer } from '../src/press/printing/print-pdf.ts';
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
let printer: Printer;
beforeAll(async () => {
  // A browser of its own, as a command has: in the one that other tests have set up for screens, text was wider.
  [school, printer] = await Promise.all([openTrialSchool(), findBrowser().then(openPrinter)]);
});
afterAll(async () => {
  await printer?.close();
  await school?.remove();
});

const card = (...args: readonly string[]) => school.run(['card', '--date', day, ...args]);
/** The HTML and text alone: exit code 4, no browser. */
const htmlAlone = (...args: readonly string[]) => card(...args, '--browser', `${school.folder}/no-browser`);
const cards = 'dist/packets/cards';
const html = (name: string) => school.text(`${cards}/${name}.html`);
/** A figure without its unit: on a card the unit is in the head. */
const number = (figure: string) => /^[\d,]+/.exec(figure)![0];
/** The engines whose keys are side by side, in order. */
const engines = (page: string) =>
  [...page.matchAll(/<th scope="colgroup"[^>]*>(.*?)<\/th>/g)].map(([, name]) => name);
/** For each key its name, and for each engine there its height, from and to, and time. */
function keyCells(page: string) {
  const body = /<tbody>(.*?)<\/tbody>/s.exec(/<table[^>]*"keys".*?<\/table>/s.exec(page)![0])![1]!;
  return [...body.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row]) => {
    const cells = [...row!.matchAll(/<t[hd]([^>]*)>(.*?)<\/t[hd]>/gs)].flatMap(([, attributes, text]) =>
      // A band in words takes up two cells.
      /colspan="2"/.test(attributes!) ? [wordsOf(text!), undefined] : [wordsOf(text!)],
    );
    const at = Array.from({ length: (cells.length - 1) / 4 }, (_, i) => {
      const [height, from, to, time] = cells.slice(1 + 4 * i, 5 + 4 * i);
      return { height, band: [from, to].filter((edge) => edge !== undefined), time };
    });
    return { name: cells[0]!, at };
  });
}
/** ISO 216 and half of ANSI/ASME Y14.1 A, mm. */
const papers = { A5: [148, 210], 'half-letter': [139.7, 215.9] } as const;
const aircraft = ['osier-15', 'sallow-10', 'withy-80'];

/** Printed in this process: a command for each card would take minutes. */
async function printed(paper: CardPaperName, approach: Approach, wind: string) {
  const { value } = await readSchool(`${school.folder}/lessons`);
  const pages = [];
  for (const aircraftId of aircraft) {
    const choices = { wind: parseWind(wind) };
    const input = makeCard({
      ...{ school: value!, aircraftId, approach, choices, paper },
      ...{ date: new Date(day), version: '0' },
    });
    const print = (document: PageDocument) => printer.print(documentHtml(document), document);
    const { document, setting } = await fitCard(print, input);
    pages.push({ ...(await readPdf(await print(document))), html: documentHtml(document), setting });
  }
  return pages;
}

describe('chalkwing card', () => {
  const asked: readonly (readonly [CardPaperName, Approach, string])[] = [
    ['A5', '180', '210/12kt'],
    ['A5', '180', 'calm'],
    ['half-letter', '180', '210/12kt'],
    ['half-letter', '180', 'calm'],
    ['half-letter', '180', '270/10kt'],
    ['half-letter', '180', '058/3kt'],
    ['half-letter', 'spiral', 'calm'],
    ['A5', 'spiral', 'calm'],
    ['A5', '180', '058/4kt'],
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
      // The last words of the foot, read last: nothing was cut off before them.
      expect(plain(pages[0]!.text)).toMatch(/inputs [\da-f]{8}$/);
      // Common practice for what is read in flight, no source: 11 pt and more, the heights at the keys 16 pt and more.
      expect(setting.size).toBeGreaterThanOrEqual(11);
      expect(html).toContain(`html{font:${setting.size}pt`);
      const key = Number(/\.key-height \.figure\{font-size:([\d.]+)rem/.exec(html)![1]);
      expect(setting.size * key).toBeGreaterThanOrEqual(16);
      expect([...html.matchAll(/font-size:0?\.\d+r?em/g)]).toEqual([]);
      // A character that our own fonts lack is a box where no other font is installed.
      expect(wordsOf(html)).not.toContain('✕');
    }
  });

  it('has the figures that a packet has for the same setting, with the engine idling and stopped', async () => {
    const directives = ['::keys', '::gates', '::kneeboard', '::turns{banks=30deg}', '::wind-table'];
    await school.write('lessons/trial.md', lessonOf(directives.join('\n\n')));
    // In this process: six packets and three cards would take a minute with the command.
    const { value } = await readSchool(`${school.folder}/lessons`);
    const choices = { wind: parseWind('190/9kt'), temperature: 297.15, qnh: 100_400 };
    const of = { school: value!, date: new Date(day), version: '0' };
    const packets: Record<string, string>[] = [];
    for (const power of ['idle', 'stopped'] as const) {
      const lesson = { lesson: 'trial', aircraft, editions: ['student'], paper: 'A4', asked: {} } as const;
      const built = await buildLesson({ ...of, ...lesson, choices: { ...choices, power } });
      packets.push(
        Object.fromEntries(
          built.packets.map(({ path, document }) => [path.replace('trial/', ''), documentHtml(document)]),
        ),
      );
    }
    for (const id of aircraft) {
      const input = makeCard({ ...of, aircraftId: id, approach: '180', choices, paper: 'A5' });
      const page = documentHtml(cardDocument(cardBody(input), input, settings[0]!));
      expect(engines(page)).toEqual(['Engine idling', 'Engine stopped']);
      const keys = keyCells(page);
      packets.forEach((of, engine) => {
        const packet = of[id]!;
        const flown = tableRows(packet, /class="keys"/).filter(([key]) => !/Aim|Touch/.test(key!));
        expect(keys.map((row) => [row.name, row.at[engine]!.height, row.at[engine]!.time])).toEqual(
          flown.map(([key, height, , time]) => [key, number(height!), number(time!)]),
        );
        const [turn, place] = [keys.find(({ name }) => name === 'Base turn')!, flown[1]![2]!];
        expect(place).toContain(`${turn.at[engine]!.band.join(' ')} abeam`);
        const gates = tableRows(packet, /class="gates"/);
        expect(gates.length).toBeGreaterThan(2);
        for (const [key, low, , high] of gates) {
          const edges = [low!, high!].map((edge) => (/^(–|the plan)$/.test(edge) ? 'plan' : number(edge)));
          const { band } = keys.find(({ name }) => name === key)!.at[engine]!;
          expect(band).toEqual(low === 'no band' ? ['no band'] : edges);
        }
      });

      const packet = packets[0]![id]!;
      const winds = tableRows(page, /"winds"/);
      // The kneeboard of a packet has the same table.
      expect(winds).toEqual(tableRows(packet, /headwind, kt/));
      // A line under a wind says what there is to know about it, across the whole table.
      const table = tableRows(packet, /class="wind-table"/).filter((row) => row.length > 3);
      const heights = winds.find(([name]) => name === 'Base key, ft')!.slice(1);
      expect(table.map((row) => row[3])).toEqual(
        table.map((row, i) => (heights[i] === '×' ? row[3] : `${heights[i]} ft`)),
      );

      const [, , , half, , whole, , stall] = tableRows(packet, /class="turns"/)[0]!;
      expect(tableRows(page, /"turns"/)[0]!.slice(2)).toEqual([
        `180° ${half}`,
        `360° ${whole}`,
        `stall ${stall}`,
      ]);
      const words = wordsOf(page);
      const speed = (name: string) => new RegExp(`${name} ?(\\d+ kt)`).exec(words)![1];
      const glide = /Glide (\d+ kt) , approach (\d+ kt)|Glide (\d+ kt), approach (\d+ kt)/.exec(
        wordsOf(packet),
      )!;
      expect([speed('Best glide'), speed('Approach')]).toEqual(glide.slice(1).filter(Boolean));
    }
  });

  it('names the engine of every key height, and has none of an idling one where the list is for a stopped one', async () => {
    await htmlAlone('--aircraft', 'osier-15', '--power', 'stopped');
    const stopped = await html('osier-15-fallow-reach-24-180.A5');
    expect(engines(stopped)).toEqual(['Engine stopped']);
    expect(wordsOf(stopped)).toContain('Stopped: headwind, kt');
    expect(wordsOf(stopped)).not.toMatch(/idling/i);

    const file = await school.text('lessons/fleet/osier-15.yaml');
    await school.write('lessons/fleet/idle.yaml', file.replace(/^ {2}stopped:.*\n/m, ''));
    expect((await htmlAlone('--aircraft', 'idle')).code).toBe(4);
    const idle = await html('idle-fallow-reach-24-180.A5');
    expect(engines(idle)).toEqual(['Engine idling']);
    expect(wordsOf(idle)).toContain(
      'Stopped: No key heights: its file gives no glide with the engine stopped.',
    );
    expect(wordsOf(idle)).not.toContain('fly the keys of the engine stopped');
  });

  it('has the height by which the turn to final is complete: 300 ft, or what the school asks for', async () => {
    await htmlAlone('--aircraft', 'osier-15');
    const card = 'osier-15-fallow-reach-24-180.A5';
    expect(wordsOf(await html(card))).toContain(
      'Turn to final complete by 300 ft, or go around (stopped: land ahead).',
    );
    const own = await school.text('lessons/school.yaml');
    await school.edit('lessons/school.yaml', 'final-turn: 300 ft', 'final-turn: 355 ft');
    await htmlAlone('--aircraft', 'osier-15');
    expect(wordsOf(await html(card))).toContain('Turn to final complete by 360 ft, or go around');
    await school.write('lessons/school.yaml', own);
  });

  it('is not made of a plan that is not to be flown: it says what is wrong, and the earlier card stays', async () => {
    const name = `${cards}/osier-15-fallow-reach-24-180.A5`;
    await card('--aircraft', 'osier-15');
    const before = [await school.read(`${name}.html`), await school.read(`${name}.pdf`)];
    const { code, err, out } = await card('--aircraft', 'osier-15', '--wind', '148/14kt');
    expect(code).toBe(3);
    expect(plain(err)).toMatch(
      /--wind: osier-15-fallow-reach-24-180, Osier 15, runway 24, wind 148° 14 kt, engine idling: not to be flown\. The crosswind is 14 kt; the limit of the Osier 15 is 9 kt\. It would be within the wind limits in \d kt/,
    );
    expect(plain(err)).toContain('1 card not to be flown (not printed).');
    expect(out).toBe('');
    expect([await school.read(`${name}.html`), await school.read(`${name}.pdf`)]).toEqual(before);
  });

  it('says the height that works where one does', async () => {
    const { value } = await readSchool(`${school.folder}/lessons`);
    const made = (feet: number) => () =>
      makeCard({
        ...{ school: value!, aircraftId: 'osier-15', approach: '180', paper: 'A5' },
        ...{ choices: { wind: parseWind('238/4kt') }, height: feet * 0.3048 },
        ...{ date: new Date(day), version: '0' },
      });
    expect(made(500)).toThrow(
      /not to be flown\. (?!.*Sound.*Sound).*Sound from [\d,]+\u00a0ft at the downwind key\.$/,
    );
    let said = '';
    try {
      made(500)();
    } catch (error) {
      said = (error as Error).message;
    }
    const from = Number(/Sound from ([\d,]+)/.exec(said)![1]!.replace(',', ''));
    const grave = (feet: number) =>
      made(feet)().plan.cautions.filter(({ grade }) => grade !== 'worth-knowing');
    expect(grave(from)).toEqual([]);
    expect(grave(from - 10).map(({ code }) => code)).toEqual(['final-turn-low']);
  });

  it('makes the cards of the other aircraft all the same', async () => {
    // Crosswind limits: 9, 7 and 12 kt.
    const { code, err, out } = await card('--wind', '148/10kt');
    expect(code).toBe(3);
    expect(err).toMatch(/Osier 15, runway 24.*not to be flown[\s\S]*Sallow 10, runway 24.*not to be flown/);
    expect(err).not.toContain('Withy 80, runway 24');
    expect(plain(err)).toContain('2 cards not to be flown (not printed).');
    expect(out).toContain('withy-80-fallow-reach-24-180.A5.pdf');
  });

  it('has a column for every round headwind up to the limit of the aircraft', async () => {
    await htmlAlone('--paper', 'A5');
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

  it('has a band above everything for a limit that is passed, a mark at its key, and no figure for such a wind', async () => {
    // So wide a pattern uses up the height of its last turn.
    const file = 'lessons/fleet/withy-80.yaml';
    await school.edit(file, 'spacing: 570 m', 'spacing: 650 m');
    await htmlAlone('--wind', 'calm', '--aircraft', 'withy-80');
    await school.edit(file, 'spacing: 650 m', 'spacing: 570 m');
    const page = await html('withy-80-fallow-reach-24-180.A5');
    const words = wordsOf(page);
    expect(words).toMatch(
      /^Card — .*?Beyond a limit: turn to final complete at \d+ ft, at least 300 ft\. Withy 80 180° power-off/,
    );
    expect(page).toMatch(/<body><p class="band">/);
    const final = /<tr><th[^>]*>Final<\/th>.*?<\/tr>/.exec(page)![0];
    expect(final.match(/role="img" aria-label="beyond a limit"/g)).toHaveLength(2);
    expect(words).toMatch(/Stopped, beyond a limit: turn to final complete at \d+ ft, at least 300 ft\./);
    const [turn, base, from] = tableRows(page, /"winds"/);
    expect([turn![1], base![1]]).toEqual(['×', '×']);
    expect(from![0]).toBe('× unless key at, ft');
    expect(Number(from![1]!.replace(',', ''))).toBeGreaterThan(1000);
    expect(words).toContain('× not sound');
    expect(words).toContain('Training material; it does not replace instruction.');
    expect(words).toContain('Invented for the demonstration.');
  });

  it('has the whole engine-failure list; without one it says so, and where to write it', async () => {
    await htmlAlone('--aircraft', 'osier-15');
    const list = wordsOf(await html('osier-15-fallow-reach-24-180.A5'));
    const file = await school.text('lessons/fleet/osier-15.yaml');
    const lines = [...file.matchAll(/^ {2}- "(.*)"$/gm)].map(([, line]) => line!);
    expect(lines.length).toBe(6);
    for (const line of lines) expect(list.replaceAll(' :', ':')).toContain(line);

    await school.write('lessons/fleet/bare.yaml', file.slice(0, file.indexOf('engine-failure:')));
    const { code, err } = await htmlAlone('--aircraft', 'bare');
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
