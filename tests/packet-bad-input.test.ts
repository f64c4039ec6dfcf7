import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lessonOf, openTrialSchool, plain, type Ran, type TrialSchool, wordsOf } from './packet-school.ts';
import { readPdf } from './pdf-reader.ts';

// The real command, with an instructor's mistakes, in a copy of the demonstration school.

interface Message {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/** The messages that were printed, by file. */
function messagesOf({ err }: Ran): Message[] {
  let file = '';
  const messages: Message[] = [];
  for (const line of err.split('\n')) {
    const found = /^(\d+):(\d+)\S*\s+(error|warning)\s+(.*)$/.exec(line);
    if (found)
      messages.push({ file, line: Number(found[1]), column: Number(found[2]), text: found[4]!.trim() });
    else if (/^\S+\.(md|yaml)$/.test(line)) file = line;
  }
  return messages;
}

/** Where a piece of the source is, lines and columns counted from 1. */
function placeOf(source: string, piece: string) {
  const before = source.slice(0, source.indexOf(piece)).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}

const sound = lessonOf('At :key[base-key]{show=height} look at the spot.\n\n::pattern\n\n::keys');
const mistaken = lessonOf(
  [
    'A word.',
    '::patern',
    'At :key[basekey]{show=height} look.',
    '::keys{colour=red}',
    ':::caution\nThis is never closed.',
  ].join('\n\n'),
  ['height: 1000'],
);
const gale = lessonOf('At :key[base-key]{show=height} look at the spot.', ['wind: 238/30kt']);
const typed = 'The glide is 6:1 at 10:30 on the map 1:5000, note:this, and wind: is said.';
const hiding = lessonOf(
  [
    '<style>.packet-cautions { display: none }</style>',
    'Before. <div hidden>',
    '## Cautions',
    ':::caution\nOur own.\n:::',
    '</div>',
  ].join('\n\n'),
);

let school: TrialSchool;
let first: Ran;
let second: Ran;
const before = new Map<string, Buffer>();

beforeAll(async () => {
  school = await openTrialSchool();
  for (const name of ['mistaken', 'gale', 'wide']) await school.write(`lessons/${name}.md`, sound);
  first = await school.build(['mistaken', 'gale', 'wide', '--aircraft', 'osier-15']);
  for (const path of await school.built()) before.set(path, await school.read(path));
  await school.write('lessons/mistaken.md', mistaken);
  await school.write('lessons/gale.md', gale);
  await school.write('lessons/wide.md', lessonOf(`A word ${'w'.repeat(300)}.`));
  await school.write('lessons/typed.md', lessonOf(typed));
  await school.write('lessons/hiding.md', hiding);
  second = await school.build(['mistaken', 'gale', 'wide', 'typed', 'hiding', '--aircraft', 'osier-15']);
});
afterAll(() => school.remove());

describe('a lesson with mistakes', () => {
  const found = (piece: RegExp) => messagesOf(second).filter(({ text }) => piece.test(text));

  it('was built before the mistakes were made', () => {
    expect(first.code).toBe(0);
    expect(first.err).not.toMatch(/error|warning|not printed/);
    expect([...before.keys()]).toEqual(
      ['gale', 'mistaken', 'wide'].flatMap((name) =>
        ['html', 'pdf', 'txt'].map((ending) => `dist/packets/${name}/osier-15.${ending}`),
      ),
    );
  });

  it('ends with exit code 1 and says all of its mistakes in one run', () => {
    expect(second.code).toBe(1);
    expect(messagesOf(second).filter(({ file }) => file === 'lessons/mistaken.md')).toHaveLength(5);
  });

  it.each([
    ['an unknown directive', /`patern`/, '::patern', /did you mean `::pattern`/],
    ['a quantity without a unit', /`height`/, '1000', /`1000` has no unit: write a length such as `1000 ft`/],
    ['a key position that does not exist', /`basekey`/, 'basekey', /did you mean `base-key`\?/],
    ['an unknown attribute', /`colour`/, 'colour', /leave `colour` and its braces out/],
    ['a block that is not closed', /never closed/, ':::caution', /end it with `:::` on a line of its own/],
  ])('%s: file, line, column, and what would be right', (_, about, piece, right) => {
    const messages = found(about);
    expect(messages).toHaveLength(1);
    const { line, column } = placeOf(mistaken, piece);
    expect(messages[0]).toMatchObject({ file: 'lessons/mistaken.md', line });
    expect(messages[0]!.text).toMatch(right);
    // An attribute is pointed at from its name or from the brace before it.
    expect(Math.abs(messages[0]!.column - column)).toBeLessThanOrEqual(piece === 'colour' ? 1 : 0);
  });

  it('a wind that no glide can beat is shown where it is written, with a wind that works', () => {
    const messages = messagesOf(second).filter(({ file }) => file === 'lessons/gale.md');
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatchObject(placeOf(gale, '238/30kt'));
    expect(plain(messages[0]!.text)).toMatch(
      /^Osier 15, runway 24, wind 238° 30 kt, engine idling: not to be flown\. .*The spot cannot be made/,
    );
    const works = Number(
      /in (?:a wind of )?(\d+) kt from the same direction/.exec(plain(messages[0]!.text))?.[1],
    );
    expect(works).toBeGreaterThan(0);
    expect(works).toBeLessThan(30);
  });

  it('something too wide to be printed to scale is named', () => {
    expect(second.err).toMatch(
      /wide\/osier-15 is not printed:\n.*"A word w+…".*beyond the right edge.*make it narrower/,
    );
  });

  it('leaves its earlier packet as it was, byte for byte, in every format', async () => {
    expect(before.size).toBe(9);
    for (const [path, bytes] of before) expect((await school.read(path)).equals(bytes), path).toBe(true);
  });

  it('does not stop the packets of other lessons, and leaves nothing half written', async () => {
    const made = ['hiding', 'typed'].flatMap((name) =>
      ['html', 'pdf', 'txt'].map((ending) => `dist/packets/${name}/osier-15.${ending}`),
    );
    expect(await school.built()).toEqual([...before.keys(), ...made].sort());
  });
});

describe('colons in ordinary text', () => {
  it('are in the HTML as typed', async () => {
    expect(messagesOf(second).filter(({ file }) => file === 'lessons/typed.md')).toEqual([]);
    expect(await school.text('dist/packets/typed/osier-15.html')).toContain(`<p>${typed}</p>`);
  });

  it('are in the PDF as typed', async () => {
    const { pages } = await readPdf(await school.read('dist/packets/typed/osier-15.pdf'));
    expect(plain(pages.map(({ text }) => text).join('\n'))).toContain(typed);
  });
});

describe("a lesson that would hide the packet's own cautions", () => {
  const standing = [
    'This is training material. It does not replace instruction, and it is no permission to fly.',
    "The aircraft's own handbook, local rules and the instructor's judgement prevail over everything printed here.",
    'Keep the village north of the field clear below 1,000 ft.',
    'Practise these approaches only under instruction, or when signed off for them.',
  ];

  it('is warned that HTML is left out', () => {
    const warnings = messagesOf(second).filter(({ file }) => file === 'lessons/hiding.md');
    expect(warnings.length).toBeGreaterThanOrEqual(2);
    expect(warnings[0]).toMatchObject(placeOf(hiding, '<style>'));
    for (const { text } of warnings) expect(text).toMatch(/HTML/);
  });

  it('has them in the HTML, before its own words, and nothing that hides them', async () => {
    const html = await school.text('dist/packets/hiding/osier-15.html');
    expect(html).not.toMatch(/packet-cautions\s*\{\s*display|<div hidden/);
    const block = /<section class="caution packet-cautions"[\s\S]*?<\/section>/.exec(html)!;
    for (const caution of standing) expect(wordsOf(block[0])).toContain(caution);
    expect(block.index).toBeLessThan(html.indexOf('Our own.'));
  });

  it('has them on the first page of the PDF', async () => {
    const { pages } = await readPdf(await school.read('dist/packets/hiding/osier-15.pdf'));
    for (const caution of standing) expect(plain(pages[0]!.text)).toContain(caution);
  });
});

describe('without a browser', () => {
  it('the HTML is written, and a PDF of an earlier build beside it is named: its figures may be others', async () => {
    const pdf = await school.read('dist/packets/typed/osier-15.pdf');
    await school.write('lessons/typed.md', lessonOf('Newer words.'));
    const ran = await school.buildHtml(['typed', '--aircraft', 'osier-15']);
    expect(ran.code).toBe(4);
    expect(ran.err).toMatch(/typed\/osier-15\.pdf is of an earlier build: do not use it/);
    expect(ran.err).toMatch(/--browser names no program that can be run/);
    expect(await school.text('dist/packets/typed/osier-15.html')).toContain('<p>Newer words.</p>');
    expect((await school.read('dist/packets/typed/osier-15.pdf')).equals(pdf)).toBe(true);
  });
});

describe('a mistake outside the lesson', () => {
  it.each([
    [['--aircraft', 'osier-51'], /^--aircraft osier-51: .*no aircraft `osier-51`; did you mean `osier-15`\?/],
    [['--runway', '42'], /^--runway 42: Fallow Reach has no runway `42`.*\(it has `24`/],
    [['--airfield', 'fallow'], /^--airfield fallow: .*no airfield `fallow`.*`fallow-reach`/],
  ])('%j: the option is named, not a place in the lesson, and nothing is built', async (option, said) => {
    const files = await school.built();
    const asked = option[0] === '--aircraft' ? option : ['--aircraft', 'osier-15', ...option];
    const ran = await school.buildHtml(['typed', ...asked]);
    expect(ran.code).toBe(1);
    expect(ran.err.trim()).toMatch(said);
    expect(ran.err.trim().split('\n')).toHaveLength(1);
    expect(await school.built()).toEqual(files);
  });

  it('a wind that no glide can beat, asked for: the option and the lesson are named, and the exit code is 3', async () => {
    const files = await school.built();
    const ran = await school.buildHtml(['typed', '--aircraft', 'osier-15', '--wind', '238/30kt']);
    expect(ran.code).toBe(3);
    const [said, count, ...more] = plain(ran.err.trim().replaceAll('\n', '|')).split('|');
    expect(said).toMatch(/^--wind: typed, Osier 15, .*: not to be flown\. .*The spot cannot be made/);
    expect(count).toBe('1 packet not to be flown (not printed).');
    expect(more).toEqual([]);
    expect(await school.built()).toEqual(files);
  });

  it('an aircraft that the lesson can not be made for does not stop the others', async () => {
    const own = await school.text('lessons/fleet/osier-15.yaml');
    await school.write('lessons/fleet/osier-15.yaml', own.slice(0, own.indexOf('engine-failure:')));
    await school.write('lessons/listed.md', lessonOf('::checklist'));
    const ran = await school.buildHtml(['listed', '--aircraft', 'osier-15', 'withy-80']);
    await school.write('lessons/fleet/osier-15.yaml', own);
    expect(ran.code).toBe(1);
    expect(messagesOf(ran)).toEqual([
      expect.objectContaining({
        file: 'lessons/listed.md',
        text: expect.stringMatching(/^The Osier 15 has no/),
      }),
    ]);
    expect((await school.built()).filter((path) => path.includes('/listed/'))).toEqual([
      'dist/packets/listed/withy-80.html',
      'dist/packets/listed/withy-80.txt',
    ]);
  });

  it('aircraft with missing and wrong figures: every one in its file, and no packet changes', async () => {
    const files = await school.built();
    const old = await school.read('dist/packets/typed/osier-15.html');
    await school.edit('lessons/fleet/osier-15.yaml', 'speeds: { stall: 29 kt, ', 'speeds: { ');
    await school.edit('lessons/fleet/osier-15.yaml', 'span: 10 m', 'span: 10');
    await school.edit('lessons/fleet/withy-80.yaml', 'mass: { reference: 450 kg, flown: 420 kg }\n', '');
    await school.write('lessons/typed.md', lessonOf('Other words.'));
    const source = await school.text('lessons/fleet/osier-15.yaml');
    const ran = await school.buildHtml(['typed', '--aircraft', 'osier-15']);
    expect(ran.code).toBe(1);
    const messages = messagesOf(ran);
    expect(messages).toHaveLength(3);
    expect(messages).toContainEqual({
      file: 'lessons/fleet/osier-15.yaml',
      line: placeOf(source, 'span: 10').line,
      column: placeOf(source, 'span: 10').column + 'span: '.length,
      text: expect.stringMatching(/`10` has no unit: write a length such as/),
    });
    expect(messages).toContainEqual(
      expect.objectContaining({
        file: 'lessons/fleet/osier-15.yaml',
        line: placeOf(source, 'speeds:').line,
        text: expect.stringMatching(/stall.* is missing: write it as `stall: \d+ kt`/),
      }),
    );
    expect(messages).toContainEqual(
      expect.objectContaining({
        file: 'lessons/fleet/withy-80.yaml',
        text: expect.stringMatching(/`mass` is missing: write it as `mass: \{ reference: \d+ kg/),
      }),
    );
    expect(await school.built()).toEqual(files);
    expect((await school.read('dist/packets/typed/osier-15.html')).equals(old)).toBe(true);
  });

  it('an aircraft file with a mistake does not stop the packets of the others', async () => {
    const ran = await school.buildHtml(['typed', '--aircraft', 'osier-15', 'sallow-10']);
    expect(ran.code).toBe(1);
    expect(ran.err).toContain('No packet is built for `osier-15`: its file has a mistake.');
    expect(await school.text('dist/packets/typed/sallow-10.html')).toContain('<p>Other words.</p>');
    expect(await school.text('dist/packets/typed/osier-15.html')).not.toContain('Other words.');
  });
});
