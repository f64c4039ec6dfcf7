import { execFile } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import type { FrontMatter } from '../src/lesson/front-matter.ts';
import { type Choices, scenarioOf } from '../src/press/packet/scenario.ts';
import { readMetar } from '../src/school/metar.ts';
import { readSchool } from '../src/school/read.ts';

const root = new URL('..', import.meta.url).pathname;
const report = 'METAR XXXX 251150Z 21008G14KT 9999 FEW030 25/11 Q0995 NOSIG';
const knot = 1852 / 3600;

function run(...args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    execFile(
      process.execPath,
      ['src/cli/chalkwing.js', ...args],
      { cwd: root, maxBuffer: 1 << 26 },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

const approach = ['--runway', '24', '--approach', '180', '--json'];
const files = [
  '--aircraft',
  'lessons/fleet/osier-15.yaml',
  '--airfield',
  'lessons/airfields/fallow-reach.yaml',
];
const plan = (...args: readonly string[]) => run('plan', ...files, ...approach, ...args);

describe('plan --metar', () => {
  const flownWind = (out: string) => {
    const { wind } = JSON.parse(out);
    return wind.find(({ height }: { height: number }) => height === 10);
  };

  it('flies the wind and the air of the report, as if each were typed', async () => {
    const reported = await plan('--metar', report);
    const typed = await plan(
      ...['--wind', '210/8kt', '--gust', '14kt', '--temperature', '25C', '--qnh', '995hPa'],
    );
    expect(reported.err).toBe('');
    expect(reported.out).toBe(typed.out);
    expect(flownWind(reported.out).speed).toBeCloseTo(8 * knot, 9);
    expect(JSON.parse(reported.out).air.temperature).toBeCloseTo(298.15, 9);
  });
  it('lets an option go before it', async () => {
    const { out } = await plan('--metar', report, '--wind', '240/5kt', '--temperature', '10C');
    expect(flownWind(out).speed).toBeCloseTo(5 * knot, 9);
    expect(flownWind(out).from).toBeCloseTo(240, 9);
    expect(JSON.parse(out).air.temperature).toBeCloseTo(283.15, 9);
  });
  it('asks for the wind where the report has no direction, and takes the rest', async () => {
    const variable = report.replace('21008G14KT', 'VRB02KT');
    const refused = await plan('--metar', variable);
    expect(refused).toMatchObject({ code: 2, out: '' });
    expect(refused.err).toMatch(/^--metar: The wind of XXXX is variable .*--wind/);
    const { out } = await plan('--metar', variable, '--wind', '210/2kt');
    expect(JSON.parse(out).air.temperature).toBeCloseTo(298.15, 9);
  });
  it('says so where the direction varies, and flies the mean that is given', async () => {
    const { code, out, err } = await plan('--metar', report.replace('21008G14KT', '21008G14KT 180V250'));
    expect({ code, err }).toEqual({ code: 0, err: expect.stringMatching(/^--metar: the wind varies/) });
    expect(flownWind(out).from).toBeCloseTo(210, 9);
  });
  it('exits 2 with what would be right where it cannot be read', async () => {
    const { code, out, err } = await plan('--metar', 'sunny, light wind');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^--metar: `sunny, light wind` is not a METAR: .*METAR XXXX/);
    expect(err).not.toMatch(/^\s+at /m);
  });
  it('is named where its wind is more than can be flown', async () => {
    const { code, err } = await plan('--metar', report.replace('21008G14KT', '21095KT'));
    expect(code).toBe(2);
    expect(err).toMatch(/^--metar: .*87 kt/);
  });
});

describe('build --metar', () => {
  it('exits 1 where it cannot be read, and builds nothing', async () => {
    const { code, out, err } = await run('build', '--metar', 'hello', '--out', 'dist/never-made');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/^--metar: `hello` is not a METAR/);
  });
  it("computes a packet for the report's air, in place of the lesson's and the school's", async () => {
    const { value: school } = await readSchool(`${root}lessons`);
    const lesson: FrontMatter = { title: 'For this test', approach: '180', temperature: 280, qnh: 101_000 };
    const request = (choices: Choices) => scenarioOf(school!, lesson, 'osier-15', choices).request;
    const { wind, gust, temperature, qnh } = readMetar(report);
    expect(request({ wind, gust, temperature, qnh })).toMatchObject({ wind, gust, temperature, qnh });
    expect(request({})).toMatchObject({ temperature: 280, qnh: 101_000, gust: undefined });
  });
});
