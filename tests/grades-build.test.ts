import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lessonOf, openTrialSchool, plain, type Ran, type TrialSchool } from './packet-school.ts';
import { readPdf } from './pdf-reader.ts';

// Plans of every grade, printed with the real command: exit codes, what is in the terminal, and every page of the
// PDF.

const words = 'At :key[base-key]{show=height} look at the spot.\n\n::keys\n\n## More\n\nThe end.';
const crosswind = 'wind: 330/14kt';
const shown = lessonOf(words, [crosswind, 'shows: not-to-be-flown']);
const wanted = ['sound', 'shown', 'steep', '--aircraft', 'osier-15', '--edition', 'both'];
const said = ({ err }: Ran) => plain(err.replaceAll('\n', ' | '));
/** `line:column … kind …`, only of these kinds. */
const told = ({ err }: Ran, kinds: string) =>
  err.split('\n').filter((line) => new RegExp(`^\\d+:\\d+\\S* +(?:${kinds}) `).test(line));

let school: TrialSchool;
let first: Ran;
let second: Ran;
const before = new Map<string, Buffer>();
beforeAll(async () => {
  school = await openTrialSchool();
  await school.write('lessons/sound.md', lessonOf(words));
  await school.write('lessons/shown.md', shown);
  await school.write('lessons/steep.md', lessonOf(words, ['bank: 46 deg']));
  first = await school.build(wanted);
  for (const path of await school.built()) before.set(path, await school.read(path));
  await school.write('lessons/sound.md', lessonOf(words, [crosswind]));
  second = await school.buildHtml(wanted);
});
afterAll(() => school?.remove());

describe('chalkwing build', () => {
  it('prints what a lesson shows, and what is beyond a limit, and says so: exit code 0', () => {
    expect(first.code).toBe(0);
    expect([...before.keys()].filter((path) => path.endsWith('.pdf'))).toHaveLength(6);
    expect(plain(told(first, 'info').join())).toMatch(
      /^4:7\S* info Osier 15, .*: not to be flown\. .*crosswind is 14 kt/,
    );
    expect(plain(told(first, 'warning').join())).toMatch(
      /^4:7\S* warning Osier 15, .*: beyond a limit of good practice\./,
    );
    expect(said(first)).toContain(
      '2 packets beyond a limit of good practice, 2 not to be flown (shown as such).',
    );
  });

  it('prints none of a plan not to be flown: exit code 3, and the earlier packet stays', async () => {
    expect(second.code).toBe(3);
    expect(plain(told(second, 'error').join())).toMatch(
      /^4:7\S* error Osier 15, .*: not to be flown\. .*crosswind is 14 kt/,
    );
    for (const [path, bytes] of before) expect((await school.read(path)).equals(bytes), path).toBe(true);
  });

  it('tells and counts again what is not printed again', () => {
    expect(second.out).toContain('4 packets stand as they were');
    expect(told(second, 'warning|info')).toEqual(told(first, 'warning|info'));
    expect(said(second)).toContain(
      '2 packets beyond a limit of good practice, 2 not to be flown (not printed), 2 not to be flown (shown as such).',
    );
  });

  it('keeps the exit code of another mistake', async () => {
    await school.write('lessons/typo.md', lessonOf('::patern'));
    const ran = await school.buildHtml(['sound', 'typo', '--aircraft', 'osier-15']);
    expect(ran.code).toBe(1);
    expect(said(ran)).toContain('did you mean `::pattern`');
    expect(said(ran)).toContain('1 packet not to be flown (not printed).');
  });
});

describe('a printed packet of a plan not to be flown', () => {
  const pagesOf = async (name: string) =>
    (await readPdf(before.get(`dist/packets/${name}.pdf`)!)).pages.map(({ text }) => plain(text));

  it.each(['shown/osier-15', 'shown/osier-15.instructor'])('has the band on every page: %s', async (name) => {
    const pages = await pagesOf(name);
    expect(pages.length).toBeGreaterThan(2);
    for (const text of pages) expect(text).toMatch(/NOT TO BE FLOWN: .*crosswind 14 kt, at most 9 kt/);
  });

  it('has as many pages for the student as for the instructor', async () => {
    expect(await pagesOf('shown/osier-15')).toHaveLength((await pagesOf('shown/osier-15.instructor')).length);
  });

  it('and no other has any', async () => {
    for (const name of ['sound/osier-15', 'steep/osier-15'])
      for (const text of await pagesOf(name)) expect(text.toLowerCase()).not.toContain('not to be flown');
  });
});

describe('chalkwing handbook', () => {
  it('binds no book with a plan not to be flown: exit code 3', async () => {
    const text = await school.text('lessons/school.yaml');
    const own = text.replace(/chapters:\n(?: +- .*\n)+/, 'chapters: [sound]\n');
    expect(own).not.toBe(text);
    await school.write('lessons/school.yaml', own);
    const ran = await school.run(['handbook', '--aircraft', 'osier-15', '--browser', 'no-browser']);
    expect(ran.code).toBe(3);
    expect(said(ran)).toMatch(/lessons\/sound\.md .*error Osier 15, .*: not to be flown/);
    expect(said(ran)).toContain('1 chapter not to be flown (not printed).');
    expect(said(ran)).toContain('The book `osier-15` is not printed');
    expect((await school.built()).some((path) => path.includes('handbook'))).toBe(false);
  });
});
