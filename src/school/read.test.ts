import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { reporter } from 'vfile-reporter';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AircraftData } from '../flight/terms/aircraft-data.ts';
import { type ReadSchool, readAircraft, readAirfield, readSchool } from './read.ts';

const demo = join(dirname(fileURLToPath(import.meta.url)), '../../lessons');
let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'school-'));
  for (const part of ['school.yaml', 'fleet', 'airfields'])
    await cp(join(demo, part), join(folder, part), { recursive: true });
  // The demonstration's own chapters are lessons, which are not tested here.
  await change('school.yaml', /chapters:.*(\n {4}- .*)*/, 'chapters: []');
});
afterEach(() => rm(folder, { recursive: true }));

async function change(name: string, from: string | RegExp, to: string): Promise<void> {
  const text = await readFile(join(folder, name), 'utf8');
  expect(text).toMatch(from);
  await writeFile(join(folder, name), text.replace(from, to));
}

/** Reasons of all files, without their places. */
function reasons(read: ReadSchool): string[] {
  return read.files.flatMap((file) =>
    file.messages.map((message) => message.reason.replaceAll(folder, 'lessons')),
  );
}

describe('the demonstration school', () => {
  it('is read without a message, with every aircraft and airfield it names', async () => {
    const { files, value } = await readSchool(demo);
    expect(files.flatMap((file) => file.messages.map(String))).toEqual([]);
    expect([...value!.fleet.keys()]).toEqual(expect.arrayContaining(['osier-15', 'withy-80']));
    expect(value!.airfields.get('fallow-reach')?.runways.map((runway) => runway.name)).toEqual(['24', '06']);
    const flown: AircraftData | undefined = value!.fleet.get(value!.defaults.aircraft);
    expect(flown?.name).toBe('Osier 15');
    expect(value!.defaults.wind).toMatchObject({ text: '210/12kt' });
    expect(value!.defaults.wind.speed).toBeCloseTo((12 * 1852) / 3600, 12);
    expect(value!.units).toEqual({ height: 'ft', distance: 'm', speed: 'kt' });
    expect(value!.minimums.finalTurn).toBeCloseTo(91.44, 10);
  });
  it('says everywhere that it is invented', async () => {
    const { value } = await readSchool(demo);
    for (const { source } of [value!, ...value!.fleet.values(), ...value!.airfields.values()]) {
      expect(source).toMatch(/invented/i);
    }
  });
  it('has runways whose two ends lie opposite', async () => {
    const { value } = await readAirfield(join(demo, 'airfields/fallow-reach.yaml'));
    const [one, other] = value!.runways;
    expect(Math.cos(one!.heading - other!.heading)).toBeCloseTo(-1, 12);
    // One hedge, seen from both spots: its distance before one is its distance past the other.
    const between = one!.length - one!.spot - other!.spot;
    expect(other!.obstacles[0]!.along).toBeCloseTo(between - one!.obstacles[0]!.along, 9);
    expect(one!.circuit).not.toBe(other!.circuit);
  });
});

describe('a school with a mistake', () => {
  it.each([
    [
      'aircraft: osier-15',
      'aircraft: osier-51',
      'There is no aircraft `osier-51` in lessons/fleet; did you mean `osier-15`?',
    ],
    [
      'airfield: fallow-reach',
      'airfield: fallow-rich',
      'There is no airfield `fallow-rich` in lessons/airfields; did you mean `fallow-reach`?',
    ],
    [
      'runway: "24"',
      'runway: "25"',
      'There is no runway `25` in lessons/airfields/fallow-reach.yaml; did you mean `24`?',
    ],
    [
      '[osier-15, sallow-10, withy-80]',
      '[osier-15, withy-8]',
      'There is no aircraft `withy-8` in lessons/fleet; did you mean `withy-80`?',
    ],
    ['chapters: []', 'chapters: [nowhere]', 'There is no lesson `nowhere` in lessons'],
    [
      'final-turn: 300 ft',
      'final-turn: 250 ft',
      '`final-turn` in `minimums`: `250 ft` is below the built-in minimum of 300 ft; a school may tighten it, never loosen it: write `300 ft` or more',
    ],
    [
      'obstacle-clearance: 50 ft',
      'obstacle-clearance: 10 m',
      '`obstacle-clearance` in `minimums`: `10 m` is below the built-in minimum of 50 ft',
    ],
    [
      'paper: A4',
      'paper: A4\nlimits: { tailwind: 6 kt }',
      '`tailwind` in `limits`: `6 kt` is above the built-in limit of 5 kt; a school may tighten it, never loosen it: write `5 kt` or less',
    ],
    [
      'paper: A4',
      'paper: A4\nlimits: { tailwind: -1 kt }',
      '`tailwind` in `limits`: `-1 kt` is less than none',
    ],
    ['210/12kt', '210/12', '`wind` in `defaults`: `210/12`: `12` has no unit'],
    ['paper: A4', 'paper: A5', '`paper`: `A5` is none of `A4`, `Letter`; did you mean `A4`?'],
    ['height: ft', 'height: yd', '`height` in `units`: `yd` is none of `ft`, `m`'],
  ])('is told: %s changed to %s', async (from, to, start) => {
    await change('school.yaml', from, to);
    const read = await readSchool(folder);
    expect(read.value).toBeUndefined();
    expect(reasons(read).map((reason) => reason.slice(0, start.length))).toEqual([start]);
  });
  it('may tighten a minimum, in any unit', async () => {
    await change('school.yaml', 'final-turn: 300 ft', 'final-turn: 120 m');
    await change('school.yaml', 'obstacle-clearance: 50 ft', 'obstacle-clearance: 15.24 m');
    expect((await readSchool(folder)).value?.minimums).toEqual({ finalTurn: 120, obstacleClearance: 15.24 });
  });
  it('may tighten the tailwind, and need not say anything of it', async () => {
    expect((await readSchool(folder)).value?.limits).toBeUndefined();
    await change('school.yaml', 'paper: A4', 'paper: A4\nlimits: { tailwind: 9 km/h }');
    expect((await readSchool(folder)).value?.limits?.tailwind).toBeCloseTo(2.5, 9);
  });
  it('cannot be flown by default with an engine stopped that has no such glide', async () => {
    await change('school.yaml', 'power: idle', 'power: stopped');
    expect((await readSchool(folder)).value?.defaults.power).toBe('stopped');
    await change('fleet/osier-15.yaml', /\n {2}stopped: .*/, '');
    expect(reasons(await readSchool(folder))[0]).toMatch(/^`Osier 15` has no glide with the engine stopped/);
  });
  it('gets the messages of all its files in one report, with file, line and column', async () => {
    await change('school.yaml', 'paper: A4', 'paper: A5');
    await change('fleet/withy-80.yaml', '9.8 m', '9.8');
    await change('airfields/fallow-reach.yaml', '310 ft', '310 kt');
    const { files, value } = await readSchool(folder);
    expect(value).toBeUndefined();
    const report = reporter([...files], { color: false });
    expect(report).toMatch(/fleet\/withy-80\.yaml\n5:15-5:18\s+error `span` in `wing`: `9\.8` has no unit/);
    expect(report).toMatch(
      /airfields\/fallow-reach\.yaml\n3:12-3:18\s+error `elevation`: `310 kt` is a speed, not a length/,
    );
    expect(report).toContain('3 errors');
  });
});

describe('a file that is not there', () => {
  it('is a message that says where it was looked for and what there is', async () => {
    const { file, value } = await readAircraft(join(folder, 'fleet/osier-51.yaml'));
    expect(value).toBeUndefined();
    expect(file.messages[0]).toMatchObject({ fatal: true, ruleId: 'missing-file' });
    expect(file.messages[0]!.reason.replace(folder, 'lessons')).toMatch(
      /^There is no aircraft file `osier-51\.yaml` in the folder `lessons\/fleet`; did you mean `osier-15`\? \(it holds: .*osier-15/,
    );
  });
  it('also in an empty folder, or for a whole school', async () => {
    const { file } = await readAirfield(join(folder, 'nowhere/x.yaml'));
    expect(file.messages[0]!.reason).toContain('there is no YAML file in it');
    const { files, value } = await readSchool(join(folder, 'nowhere'));
    expect(value).toBeUndefined();
    expect(files[0]!.messages[0]!.reason).toContain('There is no school file `school.yaml`');
  });
  it('nor is a folder in its place a stack trace', async () => {
    const { file } = await readAircraft(join(folder, 'fleet'));
    expect(file.messages[0]!.reason).toBe('The aircraft file cannot be read (EISDIR)');
  });
});

describe('the faults of a school', () => {
  it('are read from `faults/`, and an error in one of them leaves no school', async () => {
    expect((await readSchool(folder)).value!.faults.size).toBe(0);
    await cp(join(demo, 'faults'), join(folder, 'faults'), { recursive: true });
    const { value } = await readSchool(folder);
    expect([...value!.faults.keys()]).toContain('power-off');
    for (const { source } of value!.faults.values()) expect(source).toMatch(/invented/i);
    await change('faults/power-off.yaml', 'cause:', 'causes:');
    const broken = await readSchool(folder);
    expect(broken.value).toBeUndefined();
    expect(reasons(broken)).toContainEqual(expect.stringMatching(/did you mean `cause`\?/));
  });
});

describe('the words a school grades by', () => {
  it('are its own, or ours, and at least two', async () => {
    expect((await readSchool(folder)).value!.grading).toEqual(['not yet', 'with help', 'alone', 'well']);
    await change('school.yaml', /^paper:/m, 'grading: [again, good]\npaper:');
    expect((await readSchool(folder)).value!.grading).toEqual(['again', 'good']);
    await change('school.yaml', 'grading: [again, good]', 'grading: [good]');
    expect(reasons(await readSchool(folder))).toEqual([
      expect.stringMatching(/`grading`: the list needs at least 2/),
    ]);
  });
});
