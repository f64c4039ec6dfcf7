import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = new URL('..', import.meta.url).pathname;
const aircraft = 'lessons/fleet/osier-15.yaml';
const airfield = 'lessons/airfields/fallow-reach.yaml';

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** To these tests, no-break spaces are spaces. */
const plainSpaces = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** Runs `chalkwing plan` as an instructor would, from the project's folder. */
function plan(...args: readonly string[]): Promise<Ran> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ['src/cli/chalkwing.js', 'plan', ...args],
      { cwd: root, maxBuffer: 1 << 26 },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out: plainSpaces(out), err }),
    );
  });
}

/** The demonstration approach, with options added or in place of its own. */
function ask(changes: Readonly<Record<string, string>> = {}, ...flags: readonly string[]): Promise<Ran> {
  const options = { aircraft, airfield, runway: '24', approach: '180', wind: '210/12kt', ...changes };
  return plan(...Object.entries(options).flatMap(([name, value]) => [`--${name}`, value]), ...flags);
}

describe('the plan contract, printed with --json', () => {
  // biome-ignore lint/suspicious/noExplicitAny: this is what came out of another program
  let json: any;
  let ran: Ran;
  beforeAll(async () => {
    ran = await ask({}, '--json');
    json = JSON.parse(ran.out);
  });

  const keysOf = (value: object) => Object.keys(value);

  it('is one object on standard output, nothing on standard error, exit code 0', () => {
    expect(ran.code).toBe(0);
    expect(ran.err).toBe('');
    expect(ran.out.trim().split('\n')).toHaveLength(1);
  });

  it('has these parts, in this order, and no others', () => {
    expect(keysOf(json)).toEqual([
      'format',
      'aircraft',
      'airfield',
      'runway',
      'air',
      'wind',
      'approach',
      'power',
      'circuit',
      'solved',
      'track',
      'keys',
      'gates',
      'touchdown',
      'cautions',
      'grade',
      'made',
    ]);
    expect(json.format).toBe('chalkwing-plan/1');
    expect([json.approach, json.power, json.circuit]).toEqual(['180', 'idle', 'left']);
  });

  it('names everything in them as agreed', () => {
    expect(keysOf(json.air)).toEqual(['elevation', 'temperature', 'pressure', 'density', 'densityAltitude']);
    for (const wind of json.wind) expect(keysOf(wind)).toEqual(['height', 'from', 'speed']);
    expect(keysOf(json.solved)).toEqual(['name', 'value', 'unit']);
    for (const sample of json.track) {
      expect(keysOf(sample)).toEqual([
        'time',
        'along',
        'across',
        'height',
        'heading',
        'bank',
        'eas',
        'tas',
        'sink',
        'groundspeed',
        'phase',
      ]);
    }
    for (const key of json.keys) {
      expect(keysOf(key)).toEqual(['id', 'label', 'time', 'along', 'across', 'height']);
    }
    for (const gate of json.gates) expect(keysOf(gate)).toEqual(['at', 'low', 'plan', 'high']);
    expect(keysOf(json.touchdown)).toEqual(['along', 'across', 'time', 'speed']);
    for (const caution of json.cautions) {
      expect(keysOf(caution)).toEqual(
        expect.arrayContaining(['code', 'message', 'value', 'limit', 'source', 'grade']),
      );
    }
  });

  it('lists the key positions in the order they are flown', () => {
    // biome-ignore lint/suspicious/noExplicitAny: as above
    const byTime = json.keys.filter(({ id }: any) => id !== 'aim-point');
    // biome-ignore lint/suspicious/noExplicitAny: as above
    expect(byTime.map(({ id }: any) => id)).toEqual([
      'downwind-key',
      'base-turn',
      'base-key',
      'final-turn',
      'final',
      'touchdown',
    ]);
    for (let i = 1; i < byTime.length; i++) expect(byTime[i].time).toBeGreaterThan(byTime[i - 1].time);
  });

  it('is in SI, the angles in degrees', () => {
    expect(json.runway.heading).toBeCloseTo(238, 9);
    expect(json.aircraft.turns.bank).toBeCloseTo(30, 9);
    expect(json.aircraft.turns.rollRate).toBeCloseTo(20, 9);
    expect(json.aircraft.speeds.stall).toBeCloseTo((29 * 1852) / 3600, 9);
    expect(json.airfield.elevation).toBeCloseTo(310 * 0.3048, 9);
    expect(json.airfield.variation).toBeCloseTo(-2, 9);
    expect(json.air.temperature).toBeCloseTo(288.15 - 0.0065 * json.airfield.elevation, 6);
    expect(json.air.pressure).toBeGreaterThan(99_000);
    const surface = json.wind.find(({ height }: { height: number }) => height === 10);
    expect(surface.from).toBeCloseTo(210, 9);
    expect(surface.speed).toBeCloseTo((12 * 1852) / 3600, 9);
    expect(json.keys[0].height).toBeCloseTo(1000 * 0.3048, 9);
    expect(json.keys[0].across).toBeCloseTo(-500, 9);
    const banks = json.track.map(({ bank }: { bank: number }) => bank);
    expect(Math.min(...banks)).toBeCloseTo(-30, 6);
    for (const { heading } of json.track) {
      expect(heading).toBeGreaterThanOrEqual(0);
      expect(heading).toBeLessThan(360);
    }
    expect(json.solved.name).toBe('past-abeam');
    expect(json.solved.unit).toBe('m');
    expect(json.solved.value).toBeCloseTo(-json.keys[1].along, 6);
  });

  it('touches down at the spot', () => {
    expect(Math.hypot(json.touchdown.along, json.touchdown.across)).toBeLessThan(0.1);
    expect(json.touchdown.time).toBe(json.track.at(-1).time);
  });

  it('gives null, not a hole, for what the data do not say', async () => {
    const withy = JSON.parse((await ask({ aircraft: 'lessons/fleet/withy-80.yaml' }, '--json')).out);
    expect(keysOf(withy)).toEqual(keysOf(json));
    expect(keysOf(withy.aircraft)).toEqual(keysOf(json.aircraft));
  });
});

describe('a spot that cannot be made', () => {
  it('exits 3, with beyond-reach and the JSON still printed', async () => {
    const { code, out } = await ask({ height: '300ft' }, '--json');
    expect(code).toBe(3);
    const codes = JSON.parse(out).cautions.map((caution: { code: string }) => caution.code);
    expect(codes).toContain('beyond-reach');
  });

  it('exits 3 with the table too, which says so', async () => {
    const { code, out } = await ask({ height: '300ft' });
    expect(code).toBe(3);
    expect(out).toContain('beyond-reach');
  });
});

describe('a plan that is not to be flown', () => {
  // The Osier 15 has a limit of 9 kt of crosswind.
  const crosswind = { wind: '330/14kt' };

  it('exits 3, and its grade stands in the JSON', async () => {
    const { code, out } = await ask(crosswind, '--json');
    expect(code).toBe(3);
    const { grade, made, cautions } = JSON.parse(out);
    expect({ grade, made }).toEqual({ grade: 'not-to-be-flown', made: true });
    expect(cautions).toContainEqual(
      expect.objectContaining({ code: 'crosswind-over-limit', grade: 'not-to-be-flown' }),
    );
    expect(JSON.parse((await ask({}, '--json')).out).grade).toBe('sound');
  });

  it('exits 3, and the table begins with it and says why', async () => {
    const { code, out } = await ask(crosswind);
    expect(code).toBe(3);
    expect(out).toMatch(/^Grade: NOT TO BE FLOWN\n/);
    expect(out).toMatch(
      /^Not to be flown \(crosswind-over-limit\): The crosswind is 14 kt; the limit .* 9 kt\./m,
    );
  });

  it('one beyond a limit of good practice exits 0, and says so', async () => {
    const { code, out } = await ask({ bank: '46deg' });
    expect(code).toBe(0);
    expect(out).toMatch(/^Grade: beyond a limit of good practice\n/);
    expect(out).toMatch(/^Beyond a limit of good practice \(bank-over-medium\): /m);
  });
});

describe('without --json', () => {
  it('prints a table a person reads, with units, and exits 0', async () => {
    const { code, out } = await ask();
    expect(code).toBe(0);
    expect(out).not.toContain('{');
    expect(out).toMatch(/^Grade: sound\nOsier 15/);
    for (const label of ['Downwind key', 'Base turn', 'Base key', 'Final', 'Touchdown'])
      expect(out).toContain(label);
    expect(out).toContain('1,000 ft');
    expect(out).toMatch(/Base turn: \d+ m past abeam/);
  });

  it('says the same as the JSON', async () => {
    const [table, json] = [(await ask()).out, JSON.parse((await ask({}, '--json')).out)];
    const printed = Number(/Base turn: ([\d,]+) m/.exec(table)![1]!.replace(',', ''));
    expect(Math.abs(printed - json.solved.value)).toBeLessThan(10);
    for (const { code } of json.cautions) expect(table).toContain(`(${code})`);
  });
});

describe('a request that cannot be read', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'chalkwing-plan-'));
  });
  afterAll(() => rm(folder, { recursive: true }));

  async function expectRefused(ran: Promise<Ran>, ...words: readonly (string | RegExp)[]): Promise<void> {
    const { code, out, err } = await ran;
    for (const word of words) expect(err).toMatch(word);
    expect(err).not.toMatch(/^\s+at .*:\d+:\d+/m);
    expect(out).toBe('');
    expect(code).toBe(2);
  }

  it.each([
    ['wind', '210/12', /no unit|unit/],
    ['height', '1000', /ft/],
    ['mass', '360', /kg/],
    ['temperature', '25', / C/],
    ['bank', '30', /deg/],
  ])('--%s %s, without a unit: the units are named', async (option, value, units) => {
    await expectRefused(ask({ [option]: value }), `--${option}`, value, units);
  });

  it('an option that is missing', () => expectRefused(plan('--approach', '180'), '--aircraft'));

  it('an approach, a power or a side that there is not', async () => {
    await expectRefused(ask({ approach: '45' }), '180');
    await expectRefused(ask({ power: 'full' }), 'idle');
    await expectRefused(ask({ circuit: 'both' }), 'left');
  });

  it('an option that there is not', () => expectRefused(ask({ speed: '42kt' }), '--speed'));

  it('a number out of range: the option and its range', async () => {
    await expectRefused(ask({ bank: '70deg' }), '--bank', '5 to 60 degrees');
    await expectRefused(ask({ height: '100ft' }), '--height', '200 to 4920 ft');
  });

  it('a runway that there is not: the file, the nearest name, the names', () =>
    expectRefused(ask({ runway: '25' }), airfield, '`25`', 'did you mean `24`', '24, 06'));

  it('a file that there is not: the file, the nearest name, what there is', () =>
    expectRefused(ask({ aircraft: 'lessons/fleet/osier15.yaml' }), 'osier15.yaml', 'osier-15', 'withy-80'));

  it('a file with a bare number: the file, line and field', async () => {
    const text = await readFile(join(root, aircraft), 'utf8');
    const bare = text.replace('reference: 390 kg', 'reference: 390');
    expect(bare).not.toBe(text);
    const path = join(folder, 'bare.yaml');
    await writeFile(path, bare);
    const line = bare.split('\n').findIndex((one) => one.includes('reference: 390')) + 1;
    await expectRefused(ask({ aircraft: path }), 'bare.yaml', new RegExp(`^\\s*${line}:`, 'm'), '390', 'kg');
  });

  it('a stopped engine, of an aircraft without that glide: the line to add', async () => {
    const text = await readFile(join(root, aircraft), 'utf8');
    const path = join(folder, 'idle-only.yaml');
    await writeFile(path, text.replace(/^ {2}stopped:.*\n/m, ''));
    await expectRefused(ask({ aircraft: path, power: 'stopped' }), 'glide.stopped');
  });
});
