import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { KeyPosition } from '../src/flight/terms/plan.ts';
import { formatDistance, formatHeight, formatTime } from '../src/words/figures/format.ts';
import { keyNames } from '../src/words/keys/key-names.ts';
import {
  fingerprintOf,
  openTrialSchool,
  plain,
  type TrialSchool,
  tableRows,
  wordsOf,
} from './packet-school.ts';
import { type ReadPage, type ReadPdf, readPdf } from './pdf-reader.ts';
import { openPage, openWindow } from './screen.ts';

// The demonstration lesson, built with the real command for two aircraft, then for other winds, runways, power
// settings and papers; its figures are compared with `chalkwing plan --json`, and with a ruler laid on the PDF.

const lesson = 'power-off-180';
const units = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const windy = ['--wind', '210/12kt'];
const otherDay = ['--runway', '06', '--wind', '030/8kt', '--power', 'stopped'];

let school: TrialSchool;
let elsewhere: TrialSchool;
let source: string;
const html = new Map<string, string>();
const pdf = new Map<string, ReadPdf>();
const plans = new Map<string, JsonPlan>();

interface JsonPlan {
  readonly keys: readonly KeyPosition[];
  readonly track: readonly { readonly time: number }[];
  readonly solved: { readonly value: number };
}

/** Builds into a folder of its own and keeps the HTML as `name/aircraft`. */
async function build(name: string, aircraft: readonly string[], args: readonly string[], printed: boolean) {
  const all = [lesson, '--aircraft', ...aircraft, '--out', `dist/${name}`, ...args];
  const ran = printed ? await school.build(all) : await school.buildHtml(all);
  if (ran.code !== (printed ? 0 : 4)) throw new Error(ran.err);
  for (const id of aircraft) {
    const path = `dist/${name}/${lesson}/${id}`;
    html.set(`${name}/${id}`, await school.text(`${path}.html`));
    if (printed) pdf.set(`${name}/${id}`, await readPdf(await school.read(`${path}.pdf`)));
  }
}

async function plan(aircraft: string, options: readonly string[]): Promise<JsonPlan> {
  const files = [
    '--aircraft',
    `lessons/fleet/${aircraft}.yaml`,
    '--airfield',
    'lessons/airfields/fallow-reach.yaml',
  ];
  const ran = await school.run(['plan', ...files, '--approach', '180', ...options, '--json']);
  if (ran.code !== 0) throw new Error(ran.err);
  return JSON.parse(ran.out) as JsonPlan;
}

beforeAll(async () => {
  school = await openTrialSchool();
  elsewhere = await openTrialSchool();
  source = await school.text(`lessons/${lesson}.md`);
  const both = ['osier-15', 'withy-80'];
  await build('A4', both, windy, true);
  await build('Letter', ['osier-15'], [...windy, '--paper', 'Letter'], true);
  await build('other-day', both, otherDay, false);
  await build('other-wind', ['osier-15'], ['--wind', '220/9kt'], false);
  for (const aircraft of both) {
    plans.set(`A4/${aircraft}`, await plan(aircraft, ['--runway', '24', ...windy]));
    plans.set(`other-day/${aircraft}`, await plan(aircraft, otherDay));
  }
  await school.edit('lessons/fleet/osier-15.yaml', 'landing-roll: 90 m', 'landing-roll: 95 m');
  await build('other-figure', both, windy, false);
  await school.edit('lessons/fleet/osier-15.yaml', 'landing-roll: 95 m', 'landing-roll: 90 m');
  await school.edit(
    `lessons/${lesson}.md`,
    'leaves one glide and no second try',
    'leaves one glide and no other try',
  );
  await build('other-word', ['osier-15'], windy, false);
});
afterAll(async () => {
  await school.remove();
  await elsewhere.remove();
});

describe.each(['A4/osier-15', 'A4/withy-80', 'Letter/osier-15'])('a ruler on the PDF of %s', (packet) => {
  it('reads the distance that each scale bar names, within 0.5 %', () => {
    const page = drawingPage(pdf.get(packet)!);
    const { scale, bars } = readScale(page);
    expect(bars.map(({ unit }) => unit)).toEqual(['m', 'ft']);
    for (const { length, named, unit } of bars) {
      const metres = named * (unit === 'm' ? 1 : 0.3048);
      expect(length).toBeGreaterThan(10);
      expect(Math.abs((length * scale) / 1000 / metres - 1)).toBeLessThan(0.005);
    }
  });

  it('reads 700 m along the runway, within 0.5 %, or as far as the sheet goes', () => {
    const page = drawingPage(pdf.get(packet)!);
    const { scale } = readScale(page);
    const sides = runwaySides(page, 25_000 / scale).map((length) => (length * scale) / 1000);
    expect(sides.length).toBeGreaterThan(1);
    // On Letter paper the far end of the runway, past what is flown, runs off the drawing.
    const isCut = packet.startsWith('Letter');
    const whole = isCut ? sides[0]! : 700;
    expect(whole).toBeGreaterThan(400);
    for (const side of sides) expect(Math.abs(side / whole - 1)).toBeLessThan(0.005);
  });

  it('finds the scale in figures that the caption says', () => {
    const { scale } = readScale(drawingPage(pdf.get(packet)!));
    const caption = /seen from above, scale 1:([\d,]+)/.exec(wordsOf(html.get(packet)!));
    expect(Number(caption![1]!.replaceAll(',', ''))).toBe(scale);
  });
});

describe('the same lesson for another aircraft, runway, wind and power setting', () => {
  const packets = ['A4/osier-15', 'A4/withy-80', 'other-day/osier-15', 'other-day/withy-80'];

  it.each(packets)('%s: says every word of the lesson, with figures where the directives stand', (packet) => {
    const said = figuresIn(source, html.get(packet)!);
    expect(said.length).toBeGreaterThan(15);
    for (const { text } of said) expect(text).toMatch(/\d|^Osier|^Withy/);
  });

  it.each(packets)('%s: says the figures of the key positions that the plan gives', (packet) => {
    const { keys } = plans.get(packet)!;
    const at = (id: string) => keys.find((key) => key.id === id)!;
    const figures: Record<string, (key: KeyPosition) => string> = {
      height: (key) => formatHeight(key.height, units),
      distance: (key) => formatDistance(Math.hypot(key.along, key.across), units),
      'past-abeam': (key) => formatDistance(-key.along, units),
      after: (key) => formatTime(key.time - at('downwind-key').time),
    };
    const said = figuresIn(source, html.get(packet)!).filter(({ directive }) => directive.startsWith(':key'));
    expect(said.length).toBeGreaterThan(6);
    for (const { directive, text } of said) {
      const [, id, show] = /^:key\[(.+)\]\{show=(.+)\}$/.exec(directive)!;
      expect(`${directive} ${text}`).toBe(`${directive} ${plain(figures[show!]!(at(id!)))}`);
    }
  });

  it('changes every figure but those that are the same by choice', () => {
    const one = figuresIn(source, html.get('A4/osier-15')!);
    const other = figuresIn(source, html.get('other-day/withy-80')!);
    const same = one
      .filter(({ text }, index) => text === other[index]!.text)
      .map(({ directive }) => directive);
    expect(new Set(same)).toEqual(new Set([':key[downwind-key]{show=height}', ':aircraft[bank]']));
  });

  it('draws the other approach', () => {
    const drawing = (packet: string) =>
      /<svg[^>]*id="pattern-1-drawing"[\s\S]*?<\/svg>/.exec(html.get(packet)!)![0];
    const drawings = new Set(packets.map(drawing));
    expect(drawings.size).toBe(packets.length);
  });

  it('with another wind alone, the whole lesson has other numbers and the same words', () => {
    const [one, other] = ['A4/osier-15', 'other-wind/osier-15'].map((packet) =>
      // In another wind, other words say what flying a fault comes to: short, or long, and what puts it right.
      lessonWords(html.get(packet)!.replace(/<tr class="flown">[\s\S]*?<\/tr>/g, '')),
    );
    expect(other).not.toBe(one);
    const withoutNumbers = (text: string) => text.replace(/[\d,.]*\d/g, '#');
    expect(withoutNumbers(other!)).toBe(withoutNumbers(one!));
  });
});

describe.each(['A4/osier-15', 'A4/withy-80', 'other-day/osier-15', 'other-day/withy-80'])(
  'the key tables of %s',
  (packet) => {
    it('give what `chalkwing plan --json` gives, rounded as the page rounds', () => {
      const { keys, track } = plans.get(packet)!;
      const rows = tableRows(html.get(packet)!, /class="keys"/);
      expect(rows.map(([label]) => label)).toEqual(keys.map(({ id }) => keyNames[id]));
      for (const [index, { id, height, along, across, time }] of keys.entries()) {
        const [, heightCell, placeCell, timeCell] = rows[index]!;
        expect(heightCell).toBe(plain(formatHeight(height, units)));
        const places = [along, across].map((metres) => plain(formatDistance(Math.abs(metres), units)));
        expect(placeCell!.match(/[\d,]+ m\b/g) ?? []).toEqual(places.filter((place) => place !== '0 m'));
        if (Math.abs(across) >= 5) expect(placeCell).toContain(across < 0 ? 'to the left' : 'to the right');
        expect(timeCell).toBe(id === 'aim-point' ? '–' : plain(formatTime(time - track[0]!.time)));
      }
    });

    it('give the same on the last pages, to the metre', () => {
      const { keys, solved } = plans.get(packet)!;
      const rows = tableRows(html.get(packet)!, /Key positions as flown/);
      expect(rows).toHaveLength(keys.length);
      for (const [index, { along, across, height }] of keys.entries()) {
        const [, , alongCell, acrossCell, heightCell, metresCell] = rows[index]!;
        expect(Math.abs(numberIn(alongCell!) - along)).toBeLessThanOrEqual(0.5);
        expect(Math.abs(numberIn(acrossCell!) - across)).toBeLessThanOrEqual(0.5);
        expect(heightCell).toBe(plain(formatHeight(height, units)));
        expect(Math.abs(numberIn(metresCell!) - height)).toBeLessThanOrEqual(0.0501);
      }
      const found = /to base begins; found: ([\d.]+) m/.exec(wordsOf(html.get(packet)!));
      expect(Math.abs(Number(found![1]) - solved.value)).toBeLessThanOrEqual(0.0501);
    });
  },
);

describe('the HTML', () => {
  it.each(['A4/osier-15', 'A4/withy-80'])('%s: holds everything itself', (packet) => {
    const whole = html.get(packet)!;
    const scripts = [...whole.matchAll(/<script\b([^>]*)>/g)].map(([, attributes]) => attributes!.trim());
    expect(scripts).toEqual(['type="application/json" id="study-data"', '']);
    // The study page's own program and data; its policy lets no other run, and nothing be fetched.
    expect(whole).toMatch(/<meta http-equiv="Content-Security-Policy" content="default-src 'none';/);
    const page = whole.replace(/<script\b[\s\S]*?<\/script>/g, '');
    const outward = /<(script|link|iframe|object|embed|base)\b|@import|\son\w+=/gi;
    expect(page.match(outward) ?? []).toEqual([]);
    // Names of XML vocabularies look like addresses and are not; nor are the letters of the fonts.
    const rest = page.replace(/ xmlns(:\w+)?="[^"]*"/g, '').replace(/url\(data:[^)]*\)/g, '');
    expect(rest.match(/https?:.{0,30}|\/\/[\w-]+\.\w.{0,30}/g) ?? []).toEqual([]);
    for (const [, address] of page.matchAll(/\b(?:src|href|srcset|poster|action)="([^"]*)"/g))
      expect(address).toMatch(/^(#|data:)/);
    const urls = [...page.matchAll(/url\(([^)]{0,30})/g)].map(([, start]) => start!.replace(/^["']/, ''));
    expect(urls.filter((start) => !/^(#|data:)/.test(start))).toEqual([]);
    const faces = [...page.matchAll(/@font-face\s*\{[^}]*\}/g)].map(([face]) => face);
    expect(faces.length).toBeGreaterThan(3);
    for (const face of faces)
      expect(face.slice(0, 400)).toMatch(/src:\s*url\(["']?data:font\/woff2;base64,[\w+/]{100}/);
  });

  it('opens without a network, in its own typefaces, and asks for nothing', async () => {
    const { context, close } = await openWindow();
    try {
      const page = await openPage(context);
      await page.setOfflineMode(true);
      const asked: string[] = [];
      const address = pathToFileURL(join(school.folder, 'dist/A4', lesson, 'osier-15.html')).href;
      page.on('request', (request) => {
        if (!request.url().startsWith('data:')) asked.push(request.url());
      });
      await page.goto(address, { waitUntil: 'load' });
      const faces = await page.evaluate(async () => {
        await document.fonts.ready;
        return [...document.fonts].map(({ family, status }) => ({ family, status }));
      });
      expect(asked).toEqual([address]);
      expect(await page.title()).toContain('Osier 15');
      const loaded = faces
        .filter(({ status }) => status === 'loaded')
        .map(({ family }) => family.replaceAll('"', ''));
      expect(new Set(loaded)).toEqual(new Set(['IBM Plex Sans', 'IBM Plex Serif']));
      expect(faces.filter(({ status }) => status === 'error')).toEqual([]);
    } finally {
      await close();
    }
  });
});

describe.each(['A4/osier-15', 'A4/withy-80', 'Letter/osier-15'])('the PDF of %s', (packet) => {
  it('is titled with lesson, aircraft and wind, tagged, in English', () => {
    const { title, language, tagged } = pdf.get(packet)!;
    const aircraft = packet.endsWith('osier-15') ? 'Osier 15' : 'Withy 80';
    expect(plain(title!)).toBe(
      `The 180° power-off approach — ${aircraft} · Fallow Reach 24 · wind 210° 12 kt`,
    );
    expect({ language, tagged }).toEqual({ language: 'en', tagged: true });
  });

  it('is of the paper asked for', () => {
    // ISO 216 for A4, ANSI/ASME Y14.1 for Letter (8.5 in by 11 in).
    const [width, height] = packet.startsWith('A4') ? [210, 297] : [215.9, 279.4];
    for (const page of pdf.get(packet)!.pages) {
      expect(Math.abs(page.width - width!)).toBeLessThan(0.5);
      expect(Math.abs(page.height - height!)).toBeLessThan(0.5);
    }
  });

  it('has a bookmark for every chapter of the page', () => {
    const chapters = [...html.get(packet)!.matchAll(/<h2[^>]*>(.*?)<\/h2>/g)].map(([, words]) =>
      wordsOf(words!),
    );
    expect(chapters.length).toBeGreaterThan(8);
    expect(pdf.get(packet)!.bookmarks.map(plain)).toEqual(expect.arrayContaining(chapters));
  });

  it('has its fonts inside', () => {
    const fonts = pdf.get(packet)!.pages.flatMap((page) => page.fonts);
    expect(fonts.length).toBeGreaterThan(3);
    for (const { name, embedded, type } of fonts) {
      expect(name).toContain('IBMPlex');
      expect(embedded).toBe(true);
      // Letters drawn one by one, without the typeface's own outlines.
      expect(type).not.toBe('Type3');
    }
  });

  it('has the standing, local and school cautions on its first page', () => {
    const first = plain(pdf.get(packet)!.pages[0]!.text);
    expect(first).toContain('This is training material. It does not replace instruction');
    expect(first).toContain(
      "The aircraft's own handbook, local rules and the instructor's judgement prevail",
    );
    expect(first).toContain('Call before closing the throttle, and again on final.');
    expect(first).toContain('go around from any approach that is not right by 300 ft');
  });

  it('names the fingerprint of its HTML on every page', () => {
    const mark = fingerprintOf(html.get(packet)!);
    for (const { text } of pdf.get(packet)!.pages) expect(text).toContain(`inputs ${mark}`);
  });
});

describe('the same inputs', () => {
  it('give the same bytes in another folder, time zone and language', async () => {
    const environment = {
      TZ: 'Pacific/Auckland',
      LANG: 'de_DE.UTF-8',
      LC_ALL: 'de_DE.UTF-8',
      LANGUAGE: 'de',
    };
    const ran = await elsewhere.build([lesson, '--aircraft', 'osier-15', ...windy], environment);
    expect(ran.code).toBe(0);
    for (const ending of ['html', 'pdf']) {
      const one = await school.read(`dist/A4/${lesson}/osier-15.${ending}`);
      const other = await elsewhere.read(`dist/packets/${lesson}/osier-15.${ending}`);
      expect(other.equals(one), ending).toBe(true);
    }
  });

  it('have one fingerprint, and any other input has another', () => {
    const names = [...html.keys()].filter((name) => name !== 'other-figure/withy-80');
    const marks = names.map((name) => fingerprintOf(html.get(name)!));
    expect(names).toHaveLength(8);
    expect(new Set(marks).size).toBe(names.length);
  });

  it('are those of the one aircraft: a figure of another one does not change its packet', () => {
    expect(html.get('other-figure/withy-80')).toBe(html.get('A4/withy-80'));
  });
});

/** The page with the drawing from above. */
function drawingPage({ pages }: ReadPdf): ReadPage {
  const found = pages.filter(({ words }) => words.some(({ text }) => /^Scale 1:/.test(text)));
  if (found.length !== 1) throw new Error(`${found.length} pages have a scale`);
  return found[0]!;
}

/** The scale in figures and the bars above it, the upper one first, as somebody with a ruler finds them. mm. */
function readScale(page: ReadPage) {
  const caption = page.words.find(({ text }) => /^Scale 1:/.test(text))!;
  const scale = Number(/^Scale 1:([\d,]+)/.exec(caption.text)![1]!.replaceAll(',', ''));
  const lines = page.segments
    .filter(({ from, to, length }) => Math.abs(from[1] - to[1]) < 0.01 && length > 5)
    .filter(({ from, to }) => Math.abs(Math.min(from[0], to[0]) - caption.x) < 0.3)
    .filter(({ from }) => from[1] < caption.y && from[1] > caption.y - 12)
    .sort((a, b) => a.from[1] - b.from[1]);
  const bars = lines.map(({ from, to, length }, index) => {
    // The numbers are above the upper bar and below the lower one.
    const row = page.words.filter(({ y }) =>
      index === 0 ? y < from[1] && y > from[1] - 4 : y > from[1] && y < from[1] + 6,
    );
    const end = Math.max(from[0], to[0]);
    const numbers = row.filter(({ text }) => /^[\d,]+$/.test(text));
    const atEnd = numbers.reduce((best, word) =>
      Math.abs(word.x - end) < Math.abs(best.x - end) ? word : best,
    );
    const unit = row.find(({ text, x }) => /^(m|ft)$/.test(text) && x > end)?.text;
    return { length, named: Number(atEnd.text.replaceAll(',', '')), unit };
  });
  return { scale, bars };
}

/** Lengths of the lines that run side by side, `width` mm from each other, with the same ends: a runway. */
function runwaySides({ segments }: ReadPage, width: number): number[] {
  const long = segments.filter(({ length }) => length > 15);
  const ends = ({ from, to }: (typeof long)[number], axis: 0 | 1) =>
    [from[axis], to[axis]].sort((a, b) => a - b) as [number, number];
  const beside = (one: (typeof long)[number], other: (typeof long)[number]) =>
    ([0, 1] as const).some((axis) => {
      const [a, b] = [ends(one, axis), ends(other, axis)];
      const [p, q] = [ends(one, axis === 0 ? 1 : 0), ends(other, axis === 0 ? 1 : 0)];
      const sameEnds = Math.abs(p[0] - q[0]) < 0.05 && Math.abs(p[1] - q[1]) < 0.05;
      const straight = a[1] - a[0] < 0.01 && b[1] - b[0] < 0.01;
      return straight && sameEnds && Math.abs(Math.abs(a[0] - b[0]) / width - 1) < 0.02;
    });
  return long.filter((one) => long.some((other) => beside(one, other))).map(({ length }) => length);
}

/** What the author wrote, as the words that a reader sees: from the objective to the standards, without the drawings. */
function lessonWords(page: string): string {
  const aim = /<div class="aim">[\s\S]*?<section class="caution packet-cautions"/.exec(page)![0];
  const body = /<div class="lesson">[\s\S]*?<section class="workings"/.exec(page)![0];
  return wordsOf(
    aim.replace(/<section class="caution.*$/, '') + body.replace(/<section class="workings.*$/, ''),
  );
}

/**
 * Finds every sentence of the Markdown in the page, and what is there in place of each directive. Throws where a
 * sentence is not in the page word for word.
 */
function figuresIn(markdown: string, page: string): { directive: string; text: string }[] {
  const said = lessonWords(page);
  const type = said.includes('Osier 15') ? 'weight-shift' : 'three-axis';
  return piecesOf(forAircraft(markdown, type)).flatMap((piece) => {
    const directives = piece.match(directivePattern) ?? [];
    const words = piece.split(directivePattern).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
    const found = new RegExp(words.join('(.+?)')).exec(said);
    if (!found) throw new Error(`The page does not say: ${piece}`);
    return directives.map((directive, index) => ({ directive, text: found[index + 1]! }));
  });
}

/** The words of a sentence that are for a two-seater of this class: those for other aircraft are not in the page. */
function forAircraft(markdown: string, type: string): string {
  const open = ':for[';
  const start = markdown.indexOf(open);
  if (start < 0) return markdown;
  let depth = 1;
  let end = start + open.length;
  while (depth > 0) {
    if (markdown[end] === '[') depth++;
    if (markdown[end] === ']') depth--;
    end++;
  }
  const braces = /^\{[^}]*\}/.exec(markdown.slice(end))![0];
  const classes = /class="?([a-z -]+)/.exec(braces)?.[1]?.split(' ');
  const isFor = (classes?.includes(type) ?? true) && !braces.includes('seats=1');
  const words = isFor ? markdown.slice(start + open.length, end - 1) : '';
  return forAircraft(markdown.slice(0, start) + words + markdown.slice(end + braces.length), type);
}

const directivePattern = /:[a-z]+\[[^\]]*\](?:\{[^}]*\})?/g;

/** Paragraphs, headings, list items and table cells of a lesson, one line each, without the marks of Markdown. */
function piecesOf(markdown: string): string[] {
  const body = markdown.replace(/^---\n[\s\S]*?\n---\n/, '');
  return body
    .replace(/^:::(for|instructor|student)\b.*\n[\s\S]*?^:::$/gm, '')
    .replace(/^- \d+ min: /gm, '- ')
    .replace(/^:::?.*$/gm, '\n')
    .replace(/^(#+ |\d+\. |- )/gm, '\n')
    .replace(/^\|[-| ]+\|$/gm, '')
    .replace(/^\|.*\|$/gm, (row) => row.replaceAll('|', '\n\n'))
    .split(/\n\s*\n/)
    .map((piece) => plain(piece.replace(/\*+/g, '').replaceAll('&nbsp;', ' ')))
    .filter((piece) => piece !== '');
}

function numberIn(cell: string): number {
  return Number(/−?[\d,]+(\.\d+)?/.exec(cell)![0].replace('−', '-').replaceAll(',', ''));
}
