import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { check } from './check.ts';
import { messageReport } from './message-report.ts';

const lessons = fileURLToPath(new URL('../../lessons', import.meta.url));
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-check-'));
  await cp(join(lessons, 'fleet/osier-15.yaml'), join(folder, 'fleet/osier-15.yaml'));
  await cp(join(lessons, 'fleet/withy-80.yaml'), join(folder, 'fleet/withy-80.yaml'));
  await cp(join(lessons, 'airfields/fallow-reach.yaml'), join(folder, 'airfields/fallow-reach.yaml'));
  await write('school.yaml', school('osier-15'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const write = (name: string, text: string) => writeFile(join(folder, name), text);
const school = (aircraft: string) =>
  `name: Trial\nsource: Invented.\ndefaults: { aircraft: ${aircraft}, airfield: fallow-reach, runway: "24", wind: 210/5kt }\n`;
const parts = [
  'objective',
  'prior-knowledge',
  'equipment',
  'elements',
  'instructor-actions',
  'student-actions',
  'risks',
  'standards',
];
const plan = `${parts.map((part) => `:::${part}\nWords.\n:::`).join('\n\n')}\n\n:::schedule\n- 30 min: all\n:::\n`;
const lesson = (text: string, front = '') => `---\ntitle: T\n${front}---\n\n${text}\n\n${plan}`;

/** `file line:column kind reason`, files without their folder. */
async function saidOf(...names: string[]): Promise<string[]> {
  return (await check(folder, names)).flatMap(({ path, messages }) =>
    messages.map(
      ({ line, column, reason, fatal }) =>
        `${path.slice(folder.length + 1)} ${line}:${column} ${fatal ? 'error' : 'warning'} ${reason}`,
    ),
  );
}

describe('chalkwing check', () => {
  it('has nothing to say of a sound lesson', async () => {
    await write('sound.md', lesson('At :key[base-key] look at the spot.', 'minutes: 30\n'));
    const files = await check(folder, ['sound']);
    expect(files.flatMap(({ messages }) => messages)).toEqual([]);
    expect(messageReport(files)).toBe('0 errors, 0 warnings: 5 files checked\n');
  });

  it('flies every aircraft of the class in both editions, and names those that a message is for', async () => {
    const stalls = ':for[:turn[radius]{bank=70deg}]{class=weight-shift}';
    await write('flown.md', lesson(`${stalls}\n\n:::instructor\n::keys\n:::`, 'minutes: 40\n'));
    expect(await saidOf('flown')).toEqual([
      expect.stringMatching(/^flown\.md \d+:1 error The schedule adds up to 30 min.*`minutes: 40`/),
      expect.stringMatching(/^flown\.md 6:6 error Osier 15 may be banked 60° at most, not 70°/),
      expect.stringMatching(
        /^flown\.md 8:1 error `instructor` is a note in the margin, and a table does not fit/,
      ),
    ]);
  });

  it('says in one run what is wrong with what the lessons need, draw, type and leave out', async () => {
    await write('one.md', lesson('::pattern\n\nThe throttle closes at 1,000 ft.', 'needs: [two]\n'));
    await write('two.md', lesson('Words.', 'needs: [one, thre]\n').replace(/:::risks[^:]*:::\n/, ''));
    const said = await saidOf('one', 'two');
    expect(said).toEqual([
      expect.stringMatching(/^one\.md 3:9 error .*circle.*`one` needs `two`, `two` needs `one`/),
      expect.stringMatching(/^one\.md 6:1 warning `pattern` draws `downwind-key`, /),
      'one.md 8:24 warning `1,000 ft` is typed; `:key[downwind-key]{show=height}` would follow the aircraft',
      expect.stringMatching(/^two\.md 3:9 error .*circle.*`two` needs `one`, `one` needs `two`/),
      expect.stringMatching(/^two\.md 3:14 error There is no lesson `thre`/),
      expect.stringMatching(/^two\.md 1:1 warning This lesson plan has no `:::risks`: write it/),
    ]);
    const report = messageReport(await check(folder, ['one']));
    expect(report).toContain(
      '      8 | The throttle closes at 1,000 ft.\n        |                        ^^^^^^^^\n',
    );
    expect(report).toMatch(/\n1 error, 2 warnings in 1 of 5 files\n$/);
  });

  it('takes an aircraft of another class for an error at its place', async () => {
    await write('class.md', lesson('Words.', 'class: three-axis\naircraft: osier-15\n'));
    await write('none.md', lesson('Words.', 'class: [glider]\n'));
    expect(await saidOf('class', 'none')).toEqual([
      expect.stringMatching(/^class\.md 4:11 error Osier 15 is weight-shift.*can be built for `withy-80`/),
      expect.stringMatching(/^none\.md 3:8 error No aircraft of the school is glider/),
    ]);
  });

  it('knows the nearest lesson', async () => {
    expect(await saidOf('sund')).toEqual([
      expect.stringMatching(/^sund\.md \S+ error There is no such lesson; did you mean `sound`\?/),
    ]);
  });

  it('shows mistakes in the YAML and in lessons together', async () => {
    await write('school.yaml', school('osier-51'));
    await write('wrong.md', lesson('At :key[fnal].'));
    expect(await saidOf('wrong')).toEqual([
      expect.stringMatching(
        /^school\.yaml 3:23 error There is no aircraft `osier-51`.*did you mean `osier-15`/,
      ),
      expect.stringMatching(/^wrong\.md 5:9 error .*did you mean `final`/),
    ]);
    await write('school.yaml', school('osier-15'));
  });

  it('writes nothing', async () => {
    const before = await readFile(join(folder, 'sound.md'), 'utf8');
    await saidOf();
    expect(await readFile(join(folder, 'sound.md'), 'utf8')).toBe(before);
  });
});
