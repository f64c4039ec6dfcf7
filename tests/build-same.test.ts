import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobsOption, type NamedWind, papersOption, shardOption, windsOption } from '../src/cli/options.ts';
import { contents, packetsOnly, temporaries, trialLessons } from './build-runs.ts';
import { openTrialSchool, type Ran, type TrialSchool, wordsOf } from './packet-school.ts';

// The real command and the real browser: the same packets, asked for in different ways.

const winds = ['210/12kt', '250/6kt'];
const wanted = [
  'one',
  '--aircraft',
  'osier-15',
  'sallow-10',
  '--paper',
  'both',
  '--wind',
  ...winds.join(' --wind ').split(' '),
];

let school: TrialSchool;
let whole: Ran;
let all: Map<string, string>;
const filesIn = (out: string) => contents(join(school.folder, out));

beforeAll(async () => {
  school = await openTrialSchool();
  for (const [name, text] of Object.entries(trialLessons)) await school.write(`lessons/${name}.md`, text);
  whole = await school.build([...wanted, '--out', 'all', '--jobs', '2']);
  all = await filesIn('all');
});
afterAll(() => school?.remove());

describe('several winds and papers', () => {
  it('give every combination, each in a folder that says which', () => {
    expect(whole.code).toBe(0);
    const names = ['wind-210-12kt', 'wind-250-6kt'].flatMap((wind) =>
      ['A4', 'Letter'].flatMap((paper) =>
        ['osier-15', 'sallow-10'].flatMap((aircraft) =>
          ['html', 'pdf', 'txt'].map((ending) => join(wind, paper, 'one', `${aircraft}.${ending}`)),
        ),
      ),
    );
    expect([...packetsOnly(all).keys()]).toEqual(names.sort());
    expect(new Set(packetsOnly(all).values()).size).toBe(names.length);
    expect(temporaries(all)).toEqual([]);
  });

  it('each is computed for its wind and set on its paper', () => {
    const words = (wind: string) => {
      const html = all.get(join(wind, 'A4', 'one', 'osier-15.html'))!;
      return wordsOf(Buffer.from(html, 'latin1').toString('utf8'));
    };
    expect(words('wind-210-12kt')).toContain('wind 210° 12 kt');
    expect(words('wind-250-6kt')).toContain('wind 250° 6 kt');
    const millimetres = (paper: string) => {
      const pdf = all.get(join('wind-210-12kt', paper, 'one', 'osier-15.pdf'))!;
      const [, width, height] = /\/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)/.exec(pdf)!;
      return { width: (Number(width) / 72) * 25.4, height: (Number(height) / 72) * 25.4 };
    };
    // ISO 216 and ANSI/ASME Y14.1.
    expect(millimetres('A4').width).toBeCloseTo(210, 0);
    expect(millimetres('A4').height).toBeCloseTo(297, 0);
    expect(millimetres('Letter').width).toBeCloseTo(215.9, 0);
    expect(millimetres('Letter').height).toBeCloseTo(279.4, 0);
  });

  it('say on standard error which of how many is printed, and how long the others take once that is known', () => {
    const lines = whole.err.split('\n').filter((line) => line.startsWith('Printing '));
    expect(lines).toHaveLength(8);
    expect(lines[0]).toBe(`Printing 1 of 8: ${join('wind-210-12kt', 'A4', 'one', 'osier-15')}`);
    expect(lines[7]).toMatch(/^Printing 8 of 8: .*sallow-10, (a few seconds|about \d+ (s|min)) left$/);
    // The order is by aircraft, then by winds, then by papers.
    expect(lines[4]).toContain(join('wind-210-12kt', 'A4', 'one', 'sallow-10'));
  });
});

describe('the same packet, byte for byte', () => {
  it('built alone, one at once, into another folder, for a user elsewhere who has another language', async () => {
    const elsewhere = {
      TZ: 'Pacific/Kiritimati',
      LANG: 'de_DE.UTF-8',
      LC_ALL: 'de_DE.UTF-8',
      LANGUAGE: 'de',
    };
    const asked = ['one', '--aircraft', 'sallow-10', '--wind', '250/6kt', '--paper', 'Letter', '--jobs', '1'];
    const ran = await school.build([...asked, '--out', 'some/other place'], elsewhere);
    expect(ran.code).toBe(0);
    const alone = packetsOnly(await filesIn('some/other place'));
    expect([...alone.keys()]).toEqual(
      ['html', 'pdf', 'txt'].map((ending) => join('one', `sallow-10.${ending}`)),
    );
    for (const [path, bytes] of alone)
      expect(bytes === all.get(join('wind-250-6kt', 'Letter', path)), path).toBe(true);
  });

  it('built in three parts, the parts at once: the same files as of one build, and none twice', async () => {
    const parts = await Promise.all(
      [1, 2, 3].map((part) =>
        school.build([...wanted, '--out', 'parts', '--shard', `${part}/3`, '--jobs', '1']),
      ),
    );
    expect(parts.map(({ code }) => code)).toEqual([0, 0, 0]);
    const printed = parts.flatMap(({ out }) => out.match(/^.*\.pdf \(and \.html, \.txt\)$/gm) ?? []);
    expect(printed).toHaveLength(8);
    expect(new Set(printed).size).toBe(8);
    const together = await filesIn('parts');
    expect([...together.keys()]).toEqual([...all.keys()]);
    for (const [path, bytes] of together) expect(bytes === all.get(path), path).toBe(true);
  });
});

describe('a value that cannot be read', () => {
  it('ends the command with what to type, and nothing is built', async () => {
    const ran = await school.build(['one', '--shard', '5/4', '--out', 'none']);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('write which part of how many, such as `2/4`');
    expect((await filesIn('none')).size).toBe(0);
  });

  it.each([
    [shardOption, '0/3', 'such as `2/4`'],
    [jobsOption, '0', 'write how many to print at once, 1 to 32, such as `2`'],
    [jobsOption, 'all', 'such as `2`'],
    [papersOption, 'A5', 'write `A4`, `Letter` or `both`'],
    [windsOption, '400/5kt', 'is more than 360 degrees'],
  ] as const)('%o of %j: says what to type', (option, text, said) => {
    expect(() => option(text)).toThrow(said);
  });
});

describe('values that are given again', () => {
  it('are taken together, each wind and each paper once', () => {
    const winds = ['210/12kt', '210°/12 kt', '210/6m/s', '360/5kt', '000/5kt', 'calm'];
    const taken = winds.reduce<NamedWind[]>((earlier, text) => windsOption(text, earlier), []);
    expect(taken.map(({ folder }) => folder)).toEqual([
      'wind-210-12kt',
      'wind-210-6m-s',
      'wind-360-5kt',
      'wind-calm',
    ]);
    expect(papersOption('A4', papersOption('both'))).toEqual(['A4', 'Letter']);
    expect(papersOption('Letter')).toEqual(['Letter']);
  });
});
