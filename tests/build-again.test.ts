import { mkdir, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contents, packetsOnly, trialLessons } from './build-runs.ts';
import { day, fingerprintOf, openTrialSchool, type Ran, type TrialSchool, wordsOf } from './packet-school.ts';

// What is printed again when a school is built a second time, with the real command.

const wanted = ['one', 'two', '--aircraft', 'osier-15', 'sallow-10'];
const paths = ['one', 'two'].flatMap((lesson) => ['osier-15', 'sallow-10'].map((id) => join(lesson, id)));

let school: TrialSchool;
let first: Ran;
let before: Map<string, string>;
const out = () => join(school.folder, 'dist', 'packets');
/** A browser that is not there: whatever is to be printed comes out as HTML and text alone, and with another exit code. */
const noBrowser = ['--browser', join('no', 'browser')];

async function times(): Promise<Record<string, number>> {
  const entries = [...(await contents(out())).keys()].map(async (path) => {
    const { mtimeMs, ino } = await stat(join(out(), path));
    return [path, mtimeMs + ino] as const;
  });
  return Object.fromEntries(await Promise.all(entries));
}

/** The packets whose files have been written again since. */
async function writtenSince(earlier: Record<string, number>): Promise<string[]> {
  const now = await times();
  const changed = Object.keys(now).filter((path) => now[path] !== earlier[path]);
  return [
    ...new Set(
      changed.filter((path) => /\.(html|pdf)$/.test(path)).map((path) => path.replace(/\.\w+$/, '')),
    ),
  ];
}

beforeAll(async () => {
  school = await openTrialSchool();
  for (const [name, text] of Object.entries(trialLessons)) await school.write(`lessons/${name}.md`, text);
  first = await school.build(wanted);
  before = await contents(out());
});
afterAll(() => school?.remove());

describe('a school in which nothing has changed', () => {
  it('was printed the first time', () => {
    expect(first.code).toBe(0);
    expect(first.out).not.toContain('as it was');
    expect([...packetsOnly(before).keys()].sort()).toEqual(
      paths.flatMap((path) => [`${path}.html`, `${path}.pdf`, `${path}.txt`]).sort(),
    );
  });

  it('is not printed again: no browser is started, no file is touched, whatever day it is', async () => {
    const earlier = await times();
    const ran = await school.run(['build', ...wanted, ...noBrowser]);
    expect(ran).toMatchObject({
      code: 0,
      out: '4 packets stand as they were: nothing in them has changed.\n',
    });
    expect(await times()).toEqual(earlier);
    expect(wordsOf(before.get(join('one', 'osier-15.html'))!)).toContain(day);
  });

  it('has its warnings said again, each once', async () => {
    const ran = await school.build([...wanted, ...noBrowser]);
    expect(ran.code).toBe(0);
    const warnings = (text: string) =>
      text.split('\n').filter((line) => /\bwarning\b/.test(line) && /^\d/.test(line));
    expect(warnings(first.err).length).toBeGreaterThan(0);
    expect(warnings(ran.err)).toEqual(warnings(first.err));
  });

  it('is printed again for another day, another shape of it, or because it is asked for', async () => {
    for (const option of [
      ['--date', '2031-05-07'],
      ['--again', '--date', day],
    ]) {
      const ran = await school.run(['build', 'two', '--aircraft', 'osier-15', ...option, ...noBrowser]);
      expect(ran.code).toBe(4);
    }
    // Printed as it was: the HTML alone, of another day, would lie beside a PDF of this one.
    expect((await school.build(wanted)).code).toBe(0);
    expect(await contents(out())).toEqual(before);
  });
});

describe('printed again', () => {
  it('are the packets of an aircraft whose file changed, and no other', async () => {
    const earlier = await times();
    const own = await school.text('lessons/fleet/sallow-10.yaml');
    const changed = own.replace(/^name: .*$/m, 'name: Sallow 11');
    expect(changed).not.toBe(own);
    await school.write('lessons/fleet/sallow-10.yaml', changed);
    const ran = await school.build(wanted);
    expect(ran.code).toBe(0);
    expect(await writtenSince(earlier)).toEqual([join('one', 'sallow-10'), join('two', 'sallow-10')]);
    expect(ran.out).toContain('2 packets stand as they were');
    const html = await school.text('dist/packets/one/sallow-10.html');
    expect(html).toContain('Sallow 11');
    expect(fingerprintOf(html)).not.toBe(fingerprintOf(before.get(join('one', 'sallow-10.html'))!));
    await school.write('lessons/fleet/sallow-10.yaml', own);
    await school.build(wanted);
    expect(await contents(out())).toEqual(before);
  });

  it('are those of which a file is gone or another one than was printed, and they are as they were', async () => {
    const earlier = await times();
    await rm(join(out(), 'one', 'osier-15.html'));
    const pdf = join(out(), 'two', 'sallow-10.pdf');
    // The same length: it is the content that counts.
    await writeFile(pdf, before.get(join('two', 'sallow-10.pdf'))!.replace('%PDF-1', '%PDF-2'), 'latin1');
    await writeFile(join(out(), '.printed', 'two', 'osier-15.json'), 'no JSON');
    expect((await school.build(wanted)).code).toBe(0);
    expect((await writtenSince(earlier)).sort()).toEqual(
      [join('one', 'osier-15'), join('two', 'osier-15'), join('two', 'sallow-10')].sort(),
    );
    expect(await contents(out())).toEqual(before);
  });
});

describe('a lesson with a picture', () => {
  // GIF89a, 1 × 1 pixel; the colour is that of the one entry in its table.
  const gif = (red: number) =>
    Buffer.from([
      ...Buffer.from('GIF89a'),
      ...[1, 0, 1, 0, 0x80, 0, 0, red, 0, 0, 0, 0, 0],
      ...[0x2c, 0, 0, 0, 0, 1, 0, 1, 0, 0, 2, 2, 0x44, 1, 0, 0x3b],
    ]);
  const picture = () => join(school.folder, 'lessons', 'field.gif');
  const build = (...more: readonly string[]) =>
    school.run(['build', 'pictured', 'two', '--aircraft', 'osier-15', ...more]);

  it('is printed again when the picture is another one, not when it is the same, and is left when it is gone', async () => {
    await writeFile(picture(), gif(1));
    const { two } = trialLessons;
    await school.write('lessons/pictured.md', `${two}\n\n![A field](field.gif)\n`);
    expect((await build()).code).toBe(0);
    const earlier = await times();
    await writeFile(picture(), gif(1));
    expect(await build(...noBrowser)).toMatchObject({ code: 0 });
    expect(await writtenSince(earlier)).toEqual([]);
    await writeFile(picture(), gif(2));
    expect((await build()).code).toBe(0);
    expect(await writtenSince(earlier)).toEqual([join('pictured', 'osier-15')]);
    const now = await times();
    await rm(picture());
    const ran = await build();
    expect(ran.code).toBe(1);
    expect(ran.err).toContain('There is no picture `field.gif`');
    expect(await writtenSince(now)).toEqual([]);
    await rm(join(school.folder, 'lessons', 'pictured.md'));
    await rm(join(out(), 'pictured'), { recursive: true });
    await rm(join(out(), '.printed', 'pictured'), { recursive: true });
  });
});

describe('one place that cannot be written', () => {
  it('is named with what to do, its other file stays, and the other packets are printed', async () => {
    const [blocked, other] = [join(out(), 'one', 'osier-15.pdf'), join(out(), 'two', 'osier-15.html')];
    await rm(blocked);
    await mkdir(blocked);
    await rm(other);
    const ran = await school.build(wanted);
    expect(ran.code).toBe(5);
    expect(ran.err).toMatch(
      /^dist\/packets\/one\/osier-15\.pdf is not written: a folder stands in its place\. Rename or remove that folder/m,
    );
    expect(ran.err).not.toMatch(/^\s+at /m);
    const after = await contents(out());
    expect(after.get(join('one', 'osier-15.html'))).toBe(before.get(join('one', 'osier-15.html')));
    expect(after.has(join('two', 'osier-15.html'))).toBe(true);
    await rm(blocked, { recursive: true });
    expect((await school.build(wanted)).code).toBe(0);
    expect(await contents(out())).toEqual(before);
  });
});
