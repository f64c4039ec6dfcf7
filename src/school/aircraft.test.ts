import fc from 'fast-check';
import { VFile } from 'vfile';
import { describe, expect, it } from 'vitest';
import type { AircraftData } from '../flight/terms/aircraft-data.ts';
import { type AircraftFile, parseAircraft } from './aircraft.ts';

const good = `name: Osier 15
class: weight-shift
source: Invented for this test.
mass: { reference: 390 kg, flown: 365 kg }
wing: { span: 10 m, above-wheels: 2.6 m }
speeds: { stall: 29 kt, touchdown: 33 kt, approach: 45 kt }
glide:
  idle: { speed: 42 kt, ratio: 6.4 }
  stopped: { speed: 42 kt, ratio: 5.7 }
steep-approach: { speed: 52 kt, ratio: 4.1:1 }
turns: { bank: 30 deg, limit: 60 deg, roll-rate: 20 deg/s }
landing-roll: 90 m
limits: { wind: 18 kt, crosswind: 9 kt }
`;

/** line:column and text of every message. */
function messages(text: string): string[] {
  const file = new VFile({ path: 'osier.yaml', value: text });
  const value = parseAircraft(file);
  expect(value === undefined).toBe(file.messages.some((message) => message.fatal));
  return file.messages.map((message) => `${message.line}:${message.column} ${message.reason}`);
}

/** The messages after one change to the good file. */
function changed(from: string, to: string): string[] {
  expect(good).toContain(from);
  return messages(good.replace(from, to));
}

describe('a good aircraft file', () => {
  const file = new VFile({ path: 'osier.yaml', value: good });
  const read = parseAircraft(file);

  it('is read in SI, with the round-out default', () => {
    expect(file.messages).toEqual([]);
    expect(read?.speeds.stall).toBeCloseTo((29 * 1852) / 3600, 12);
    expect(read?.turns.rollRate).toBeCloseTo(Math.PI / 9, 12);
    expect(read?.wing.aboveWheels).toBe(2.6);
    expect(read?.roundOut.height).toBeCloseTo(4.572, 12);
    expect(read?.roundOut.loadFactor).toBe(1.15);
    expect(read?.steepApproach?.ratio).toBe(4.1);
    expect(read?.engineFailure).toBeUndefined();
  });

  it('is what the flight core flies', () => {
    const flown: AircraftData = read as AircraftFile;
    expect(flown.name).toBe('Osier 15');
  });
});

describe('an aircraft file with a mistake', () => {
  it('says what an unknown key may have meant, at the key', () => {
    expect(changed('stall:', 'stal:')).toEqual([
      '6:1 `stall` in `speeds` is missing: write it as `stall: 29 kt`',
      '6:11 `stal` is not a key of `speeds`; did you mean `stall`? (known here: `stall`, `touchdown`, `approach`)',
    ]);
  });
  it('says what is missing, where, and what to type', () => {
    expect(changed('landing-roll: 90 m\n', '')).toEqual([
      '1:1 `landing-roll` is missing: write it as `landing-roll: 90 m`',
    ]);
    expect(changed('limits: { wind: 18 kt, crosswind: 9 kt }\n', '')).toEqual([
      '1:1 `limits` is missing: write it as `limits: { wind: 18 kt, crosswind: 9 kt }`',
    ]);
    expect(changed('landing-roll: 90 m', 'landing-roll:')).toEqual([
      '12:1 `landing-roll` has no value: write it as `landing-roll: 90 m`',
    ]);
  });
  it('says that a unit is missing, unknown or of the wrong kind, at the value', () => {
    expect(changed('90 m', '90')).toEqual([
      '12:15 `landing-roll`: `90` has no unit: write a length such as `90 m` (m, km, ft, NM, mi)',
    ]);
    expect(changed('29 kt', '29 m')).toEqual([
      '6:18 `stall` in `speeds`: `29 m` is a length, not a speed: write a speed such as `29 kt` (kt, km/h, mph, m/s)',
    ]);
    expect(changed('10 m', '.nan')[0]).toMatch(/^5:15 `span` in `wing`: `\.nan` is not a length/);
  });
  it.each([
    [
      'ratio: 6.4',
      'ratio: 64',
      '8:32 `ratio` in `glide`, `idle`: `64` is outside what is possible here (1 to 60)',
    ],
    [
      'bank: 30 deg',
      'bank: 80 deg',
      '11:16 `bank` in `turns`: `80 deg` is outside what is possible here (1 deg to 75 deg)',
    ],
    [
      'span: 10 m',
      'span: 10 km',
      '5:15 `span` in `wing`: `10 km` is outside what is possible here (3 m to 40 m)',
    ],
    [
      'stall: 29 kt',
      'stall: 90 kt',
      '6:18 `stall` in `speeds`: `90 kt` is outside what is possible here (10 kt to 80 kt)',
    ],
  ])('refuses %s changed to %s', (from, to, start) => {
    const found = changed(from, to);
    expect(found).toHaveLength(1);
    expect(found[0]!.slice(0, start.length)).toBe(start);
  });
  it.each([
    [
      'touchdown: 33 kt',
      'touchdown: 28 kt',
      '6:36 `touchdown` in `speeds`: must not be less than the stall speed',
    ],
    [
      'approach: 45 kt',
      'approach: 33 kt',
      '6:53 `approach` in `speeds`: must be more than the touchdown speed',
    ],
    [
      'idle: { speed: 42 kt',
      'idle: { speed: 29 kt',
      '8:18 `speed` in `glide`, `idle`: must be more than the stall speed',
    ],
    [
      'stopped: { speed: 42 kt',
      'stopped: { speed: 20 kt',
      '9:21 `speed` in `glide`, `stopped`: must be more than the stall',
    ],
    [
      '{ speed: 52 kt',
      '{ speed: 22 kt',
      '10:26 `speed` in `steep-approach`: must be more than the stall speed',
    ],
    ['4.1:1', '6.5', '10:40 `ratio` in `steep-approach`: must be less than the ratio of the glide'],
    ['bank: 30 deg', 'bank: 65 deg', '11:16 `bank` in `turns`: must not be more than the bank limit'],
    ['flown: 365 kg', 'flown: 365 lb', undefined],
    ['flown: 365 kg', 'flown: 150 kg', '4:35 `flown` in `mass`: must be 0.4 to 1.5 times the reference mass'],
    [
      'flown: 365 kg',
      'flown: 365 kg, most: 300 kg, least: 350 kg',
      '4:49 `most` in `mass`: must be more than the least mass (`least` in `mass`)',
    ],
    ['crosswind: 9 kt', 'crosswind: 9 kt, tailwind: 5', '13:51 `tailwind` in `limits`: `5` has no unit'],
    ['flown: 365 kg', 'flown: 600 kg', '4:35 `flown` in `mass`: must be 0.4 to 1.5 times the reference mass'],
  ])('holds its figures against each other: %s changed to %s', (from, to, start) => {
    const found = changed(from, to);
    expect(found).toHaveLength(start === undefined ? 0 : 1);
    if (start !== undefined) expect(found[0]!.slice(0, start.length)).toBe(start);
  });
  it('names the class that was meant', () => {
    expect(changed('class: weight-shift', 'class: weight-shft')).toEqual([
      '2:8 `class`: `weight-shft` is none of `weight-shift`, `three-axis`, `powered-parachute`, `glider`; did you mean `weight-shift`?',
    ]);
  });
  it('shows a section where one value stands, and one value where a section stands', () => {
    expect(changed('mass: { reference: 390 kg, flown: 365 kg }', 'mass: 390 kg')).toEqual([
      '4:7 `mass`: here belong keys and values such as `{ reference: 390 kg, flown: 365 kg }`',
    ]);
    expect(changed('landing-roll: 90 m', 'landing-roll: [90 m]')).toEqual([
      '12:15 `landing-roll`: here belongs one value such as `90 m`',
    ]);
  });
  it('gets all of its messages at once, cross-checks among them', () => {
    const text = good
      .replace('90 m', '90')
      .replace('touchdown: 33 kt', 'touchdown: 28 kt')
      .replace('name:', 'nam:')
      .replace('bank: 30 deg', 'bank: 65 deg');
    expect(messages(text).map((message) => message.split(' ')[0])).toEqual([
      '1:1',
      '12:15',
      '1:1',
      '6:36',
      '11:16',
    ]);
  });
  it('has its messages marked as errors of this program with a rule', () => {
    const file = new VFile({ path: 'osier.yaml', value: good.replace('90 m', '90') });
    parseAircraft(file);
    expect(file.messages[0]).toMatchObject({
      fatal: true,
      source: 'chalkwing',
      ruleId: 'value',
      file: 'osier.yaml',
      place: { start: { line: 12, column: 15 }, end: { line: 12, column: 17 } },
    });
  });
});

describe('a file that is not sound YAML', () => {
  it('is refused at the place', () => {
    expect(messages('name: [Osier\nclass: x')[0]).toMatch(/^2:1 /);
    expect(messages('')).toEqual(['1:1 The file is empty']);
    expect(messages('just words')).toEqual([
      '1:1 here belong keys and values such as `{ name: Osier 15, ... }`',
    ]);
  });
  it('may not say a thing twice', () => {
    expect(messages(`${good}landing-roll: 80 m\n`)).toEqual([
      '14:1 This key stands here twice: keep one of them',
    ]);
  });
  it('may not reach for the prototype', () => {
    expect(messages(`${good}__proto__: { name: x }\n`)[0]).toBe(
      '14:1 A key here must be a plain word, such as `name`',
    );
    expect(messages(`${good}constructor: x\n`)[0]).toMatch(/^14:1 `constructor` is not a key of this file/);
    expect(({} as { name?: string }).name).toBeUndefined();
  });
  it('may not grow without end through aliases', () => {
    const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]'];
    for (const [name, before] of ['ba', 'cb', 'dc', 'ed', 'fe', 'gf'].map((pair) => [...pair])) {
      bomb.push(`${name}: &${name} [${Array(9).fill(`*${before}`).join(', ')}]`);
    }
    expect(messages(bomb.join('\n'))[0]).toMatch(
      /^2:8 The aliases \(`\*name`\) of this file cannot be followed/,
    );
  });
  it('may use an alias, and a mistake in it is shown where it was typed', () => {
    expect(changed('stopped: { speed: 42 kt', 'stopped: { speed: &s 42')[0]).toMatch(/^9:24 /);
    const text = good.replace('idle: { speed: 42 kt', 'idle: { speed: &glide 42 kt');
    expect(messages(text.replace('stopped: { speed: 42 kt', 'stopped: { speed: *glide'))).toEqual([]);
  });
  it('never throws, whatever is in it', () => {
    const piece = fc.constantFrom(
      ...good.split(/(?<=[\s{}:,])/),
      '\t',
      '- ',
      '&a ',
      '*a',
      '? ',
      '!!int ',
      '"',
      '|',
      '---\n',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        const file = new VFile({ value: pieces.join('') });
        const value = parseAircraft(file);
        expect(value === undefined).toBe(file.messages.some((message) => message.fatal));
      }),
      { numRuns: 300 },
    );
  });
});

describe('a calibration table', () => {
  const table = (rows: string) => `${good}calibration:\n${rows}`;
  it('is sound where both speeds rise from row to row', () => {
    expect(
      messages(
        table('  - { indicated: 30 kt, equivalent: 33 kt }\n  - { indicated: 40 kt, equivalent: 42 kt }\n'),
      ),
    ).toEqual([]);
  });
  it('is told at the row whose speeds do not rise', () => {
    const [message, ...more] = messages(
      table('  - { indicated: 40 kt, equivalent: 42 kt }\n  - { indicated: 45 kt, equivalent: 41 kt }\n'),
    );
    expect(more).toEqual([]);
    expect(message).toMatch(/^16:\d+ .*both speeds must be more than those of the row before it/);
  });
});
