import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formats } from '../src/press/formats/list.ts';
import {
  contents,
  type Ended,
  packetsOnly,
  type Running,
  startBuild,
  temporaries,
  trialLessons,
} from './build-runs.ts';
import { day, openTrialSchool, type TrialSchool } from './packet-school.ts';
import { descendants, isAlive } from './processes.ts';

// The real command, stopped and disturbed while it prints. Process ids are looked up the Linux way.

const wanted = ['one', 'two', '--aircraft', 'osier-15', 'sallow-10', '--date', day, '--jobs', '2'];

let school: TrialSchool;
/** As an undisturbed build makes them. */
let sound: Map<string, string>;
const filesIn = (out: string) => contents(join(school.folder, out));
const start = (out: string) => startBuild(school.folder, [...wanted, '--out', out]);

/** Does something to a build in the middle of its printing. Where it came too late, another build is begun, a few times. */
async function whilePrinting(
  name: string,
  act: (build: Running, browsers: readonly number[]) => void,
  cameTooLate: (ended: Ended, browsers: readonly number[]) => boolean,
) {
  for (let attempt = 1; ; attempt += 1) {
    const out = `${name}-${attempt}`;
    const build = start(out);
    await build.said(/Printing 3 of 4/);
    const browsers = descendants(build.process.pid!).filter(isAlive);
    act(build, browsers);
    const ended = await build.ended;
    if (attempt === 5 || !cameTooLate(ended, browsers)) return { out, browsers, ended };
  }
}

beforeAll(async () => {
  school = await openTrialSchool();
  for (const [name, text] of Object.entries(trialLessons)) await school.write(`lessons/${name}.md`, text);
  expect((await start('sound').ended).code).toBe(0);
  sound = await filesIn('sound');
  expect(packetsOnly(sound).size).toBe(4 * formats.length);
});
afterAll(() => school?.remove());

describe.runIf(process.platform === 'linux')('a build', () => {
  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
  ] as const)(
    'that %s stops leaves whole packets, no temporary file and no browser, and goes on from there',
    async (signal, code) => {
      const { out, browsers, ended } = await whilePrinting(
        signal,
        (build) => build.process.kill(signal),
        (ended) => ended.code === 0,
      );
      expect(browsers.length).toBeGreaterThan(0);
      expect(ended.code).toBe(code);
      expect(ended.err).toMatch(
        /Stopped: [1-3] of 4 printed\. Give the same command again to go on from here\./,
      );
      expect(ended.err).not.toMatch(/^\s+at |not printed/m);
      expect(browsers.filter(isAlive)).toEqual([]);
      const left = await filesIn(out);
      expect(temporaries(left)).toEqual([]);
      for (const [path, bytes] of left) expect(bytes === sound.get(path), path).toBe(true);
      if (signal === 'SIGTERM') return;
      const done = packetsOnly(left).size / formats.length;
      const next = await start(out).ended;
      expect(next.code).toBe(0);
      expect(next.out).toMatch(new RegExp(`^${done} packets? stands? as`, 'm'));
      expect(await filesIn(out)).toEqual(sound);
    },
  );

  it('whose browser is killed starts another one, and prints every packet', async () => {
    const { out, browsers, ended } = await whilePrinting(
      'killed',
      (_, browsers) => {
        for (const pid of browsers) process.kill(pid, 'SIGKILL');
      },
      (_, browsers) => browsers.length === 0,
    );
    expect(browsers.length).toBeGreaterThan(0);
    expect(ended.err).not.toContain('not printed');
    expect(ended.code).toBe(0);
    expect(await filesIn(out)).toEqual(sound);
  });
});

describe('two builds at once into one folder', () => {
  it('both end well, and leave the files of one', async () => {
    const ended = await Promise.all([start('shared').ended, start('shared').ended]);
    expect(ended.map(({ code }) => code)).toEqual([0, 0]);
    expect(await filesIn('shared')).toEqual(sound);
  });
});
