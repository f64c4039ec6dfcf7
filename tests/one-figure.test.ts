import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { documentHtml } from '../src/press/formats/document-html.ts';
import { buildLesson } from '../src/press/packet/build.ts';
import { readSchool } from '../src/school/read.ts';
import type { School } from '../src/school/school.ts';
import { parseWind } from '../src/units/wind-text.ts';
import { plain, tableRows, wordsOf } from './packet-school.ts';

// One figure, one rounding: packets of demonstration lessons are made in memory, with a record of every figure that
// is printed. Whatever is printed of one number reads the same on all pages of a packet.

interface Printed {
  readonly kind: string;
  readonly value: number;
  readonly text: string;
}

const { printed, recorded } = vi.hoisted(() => {
  const printed: Printed[] = [];
  /** A module whose formatters also note what they print, for each with its kind of quantity. */
  const recorded = <T extends object>(module: T, kinds: Readonly<Record<string, string>>): T => {
    const noting = Object.entries(kinds).map(([name, kind]) => {
      const print = module[name as keyof T] as (...args: unknown[]) => string;
      const noted = (value: number, ...rest: unknown[]) => {
        const text = print(value, ...rest);
        printed.push({ kind, value: Math.abs(value), text: text.replace('\u2212', '') });
        return text;
      };
      return [name, noted];
    });
    return { ...module, ...Object.fromEntries(noting) };
  };
  return { printed, recorded };
});

vi.mock('../src/words/figures/format.ts', async (original) =>
  recorded(await original<object>(), {
    formatHeight: 'height',
    formatLowHeight: 'height',
    formatDistance: 'distance',
    formatSpeed: 'speed',
    formatSink: 'sink',
    formatTime: 'time',
    formatAngle: 'angle',
  }),
);
vi.mock('../src/words/figures/safe-rounding.ts', async (original) =>
  recorded(await original<object>(), {
    formatEdge: 'height',
    formatLeastHeight: 'height',
    formatSafeDistance: 'distance',
    formatMostSpeed: 'speed',
    formatMostAngle: 'angle',
  }),
);

interface Packet {
  readonly name: string;
  readonly html: string;
  readonly figures: readonly Printed[];
}

const settings = [
  { lesson: 'power-off-180', aircraft: 'osier-15', wind: '210/12kt', power: 'idle' },
  { lesson: 'power-off-180', aircraft: 'withy-80', wind: '210/12kt', power: 'stopped' },
  { lesson: 'power-off-180', aircraft: 'sallow-10', wind: '058/2kt', power: 'idle' },
  { lesson: 'power-off-90', aircraft: 'withy-80', wind: '0/0kt', power: 'idle' },
  { lesson: 'power-off-180', aircraft: 'withy-80', wind: '328/5kt', power: 'idle' },
  { lesson: 'power-off-360', aircraft: 'osier-15', wind: '240/9kt', power: 'idle' },
  { lesson: 'wind-in-the-pattern', aircraft: 'osier-15', wind: '238/6kt', power: 'stopped' },
  { lesson: 'crosswind-landings', aircraft: 'withy-80', wind: '290/10kt', power: 'idle' },
] as const;

async function make(school: School, setting: (typeof settings)[number]): Promise<Packet> {
  const { lesson, aircraft, wind, power } = setting;
  printed.length = 0;
  const { packets, file } = await buildLesson({
    school,
    lesson,
    aircraft: [aircraft],
    choices: { wind: parseWind(wind), power },
    asked: {},
    editions: ['instructor'],
    paper: 'A4',
    date: new Date('2031-05-06'),
    version: '0',
  });
  const name = Object.values(setting).join(', ');
  if (packets.length !== 1) throw new Error(`${name}: ${file.messages.map(String).join('\n')}`);
  return { name, html: documentHtml(packets[0]!.document).replaceAll('\u00a0', ' '), figures: [...printed] };
}

let packets: readonly Packet[];
beforeAll(async () => {
  const { value: school } = await readSchool(join(import.meta.dirname, '..', 'lessons'));
  const made: Packet[] = [];
  for (const setting of settings) made.push(await make(school!, setting));
  packets = made;
});

describe('a figure of a packet', () => {
  it('reads alike wherever its number is printed', () => {
    for (const { name, figures } of packets) {
      expect(figures.length).toBeGreaterThan(100);
      const texts = new Map<string, Set<string>>();
      for (const { kind, value, text } of figures) {
        if (value < 1e-6) continue;
        const unit = text.slice(text.lastIndexOf('\u00a0') + 1);
        const number = `${kind} of ${value.toPrecision(9)} in ${unit}`;
        texts.set(number, (texts.get(number) ?? new Set()).add(text));
      }
      const various = [...texts]
        .filter(([, read]) => read.size > 1)
        .map(([number, read]) => [number, ...read]);
      expect(various, name).toEqual([]);
    }
  });

  it('is the same wherever a key has its height', () => {
    for (const { name, html } of packets) {
      const heights = flownHeights(html);
      expect(heights.size, name).toBeGreaterThan(4);
      const printedAt = [
        ...rowsOf(html, /class="keys"/).map(([label, height]) => [label!, height!] as const),
        ...rowsOf(html, /Planned against flown/).map(([label, height]) => [label!, height!] as const),
        ...gatesOf(html).map(([label, , planned]) => [label!, planned!] as const),
        ...descriptions(html).flatMap((text) =>
          [...text.matchAll(/(?:^|\. )([A-Z][a-z]+(?: [a-z]+)?): ([\d,]+ ft), /g)].map(
            ([, label, height]) => [label!, height!] as const,
          ),
        ),
      ].filter(([label]) => heights.has(keyName(label)));
      expect(printedAt.length, name).toBeGreaterThan(4);
      for (const [label, height] of printedAt) {
        expect(height, `${name}: ${label}`).toBe(heights.get(keyName(label)));
      }
    }
  });

  it('is the same edge of a band in the table, the drawing and the questions, never one above the other', () => {
    let bands = 0;
    for (const { name, html } of packets) {
      const gates = gatesOf(html);
      const said = descriptions(html).join(' ');
      const asked = tables(html).filter((table) => /Not below/.test(table) && !/class="gates"/.test(table));
      for (const [label, low, planned, high] of gates) {
        const at = keyName(label!) === 'Final' ? 'final' : `the ${keyName(label!).toLowerCase()}`;
        const edge = (text: string) => (text === 'the plan' ? `the planned ${planned}` : text);
        const isNone = low === 'no band';
        const band = `The spot is still made from ${at} between ${edge(low!)} and ${edge(high!)}`;
        if (/still made from/.test(said)) expect(said.includes(band), `${name}: ${band}`).toBe(!isNone);
        for (const table of asked) {
          const row = tableRows(table, /Not below/).find(([each]) => keyName(each!) === keyName(label!));
          if (row) expect(row.slice(1, 4), `${name}: ${label}`).toEqual([low, planned, high]);
        }
        const [least, most] = [low!, high!].map(feet);
        if (!Number.isNaN(least! + most!)) expect(least!, `${name}: ${label}`).toBeLessThanOrEqual(most!);
        bands += isNone ? 0 : 1;
      }
    }
    expect(bands).toBeGreaterThan(6);
  });

  it('of what a plan has in hand below is the one that the two printed beside it leave', () => {
    const inHand = packets.flatMap(({ html }) =>
      rowsOf(html, /class="gates"/).flatMap(([, low, planned]) => {
        const said = /^([\d.,]+ ft) ([\d.,]+ ft) in hand below$/.exec(planned!);
        return said ? [[feet(said[1]!) - feet(low!), feet(said[2]!)]] : [];
      }),
    );
    expect(inHand.length).toBeGreaterThan(6);
    for (const [left, said] of inHand) expect(said).toBe(left);
  });

  it('of a caution is that of the tables, and differs from its limit as it really does', () => {
    let held = 0;
    for (const { name, html } of packets) {
      const text = plain(wordsOf(html));
      const heights = flownHeights(html);
      const limits = /Limits: wind, crosswind ?([\d,]+ kt), ([\d,]+ kt)/.exec(text)!;
      for (const [, value, limit] of text.matchAll(
        /The turn to final is complete at ([\d.,]+ ft); it should be complete at ([\d.,]+ ft)/g,
      )) {
        expect(value, name).toBe(heights.get('Final'));
        expect(feet(value!)).toBeLessThan(feet(limit!));
        held++;
      }
      for (const [, value, limit] of text.matchAll(/The crosswind is ([\d.]+ kt).*? is ([\d.]+ kt)/g)) {
        expect(limit, name).toBe(limits[2]);
        expect(Number.parseFloat(value!)).toBeGreaterThan(Number.parseFloat(limit!));
        held++;
      }
    }
    expect(held).toBeGreaterThan(0);
  });
});

describe('the words of a packet', () => {
  it('take no wind for a headwind that is none', () => {
    const notInto = packets.filter(({ name }) => /, (058\/2kt|0\/0kt),/.test(name));
    expect(notInto).toHaveLength(2);
    for (const { name, html } of notInto) {
      const text = plain(wordsOf(html));
      expect(text, name).not.toMatch(
        /into this wind|best speed into|With a headwind on final|laid into a headwind|wind down the runway/,
      );
      expect(text, name).toMatch(/along the runway, (tailwind 2 kt|no headwind)/);
    }
  });
});

/** Without the mark of a limit that is passed there. */
const keyName = (label: string) => label.replace(/ (beyond a limit|not to be flown)$/, '');
/** The heights at the keys, from the workings that end every packet. */
const flownHeights = (html: string) =>
  new Map(
    tableRows(html, /Key positions as flown, from the spot/).map(
      (row) => [keyName(row[0]!), row[4]!] as const,
    ),
  );
const feet = (text: string) => (/\d/.test(text) ? Number(text.replace(/[^\d.]/g, '')) : Number.NaN);
const tables = (html: string) => [...html.matchAll(/<table[\s\S]*?<\/table>/g)].map(([table]) => table);
const rowsOf = (html: string, which: RegExp) =>
  tables(html).some((table) => which.test(table)) ? tableRows(html, which) : [];
/** Without what the plan has in hand, which is under its height. */
const gatesOf = (html: string) =>
  rowsOf(html, /class="gates"/).map((row) =>
    row.map((cell) => cell.replace(/ [\d.,]+ ft in hand below$/, '')),
  );
const descriptions = (html: string) =>
  [...html.matchAll(/<desc[^>]*>([\s\S]*?)<\/desc>/g)].map(([, text]) => plain(wordsOf(text!)));
