import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { WordsAnswer } from '../src/desk/api.ts';
import { aircraftClass } from './addition/a-class.ts';
import { directive } from './addition/a-directive.ts';
import { fault } from './addition/a-fault.ts';
import { outputFormat } from './addition/a-format.ts';
import type { Addition, BuiltHouse } from './addition/addition.ts';
import { approach } from './addition/an-approach.ts';
import { House, type Touched, touched } from './addition/house.ts';

/*
 * What the house promises of additions, kept by adding: to a copy of the sources, one of each kind, all at once. That a
 * part left out is an error of types, `addition/missing-parts.ts` says to the compiler.
 */
const additions: readonly Addition[] = [directive, approach, fault, outputFormat, aircraftClass];

let house: House;
let built: BuiltHouse;
const changes = new Map<Addition, readonly Touched[]>();

beforeAll(async () => {
  house = await House.copy();
  for (const addition of additions) {
    const before = await house.files();
    await addition.add(house);
    changes.set(addition, touched(before, await house.files()));
  }
}, 60_000);
afterAll(() => house?.remove());

const isMade = ({ path }: Touched, { mayMake }: Addition) => mayMake.some((each) => path.startsWith(each));

describe('to add', () => {
  it.each(additions)('$name, no file is touched but those that are promised', (addition) => {
    const all = changes.get(addition)!;
    const made = all.filter((each) => each.isNew);
    const changed = all.filter((each) => !each.isNew);
    const lines = changed.map((each) => `${each.path} (${each.lines} lines)`);
    console.log(
      `${addition.name}: new ${made.map(({ path }) => path).join(', ') || 'none'}; changed ${lines}`,
    );
    expect(made.length).toBeGreaterThan(0);
    expect(made.filter((each) => !isMade(each, addition))).toEqual([]);
    expect(Object.fromEntries(changed.map((each) => [each.path, each.lines]))).toEqual(addition.mayChange);
  });
});

describe('with all of them added', () => {
  beforeAll(async () => {
    const before = await house.files();
    const reference = await house.chalkwing(['reference']);
    expect(reference).toMatchObject({ code: 0 });
    // What it writes is made from the definitions, and is for authors alone.
    const written = touched(before, await house.files());
    expect(written.filter(({ path }) => !/^(docs|schemas)\//.test(path))).toEqual([]);

    const lessons = additions.flatMap((addition) => Object.entries(addition.lessons));
    for (const [id, text] of lessons) await house.write(`lessons/${id}.md`, text);
    // Without a browser the HTML is written all the same.
    const build = await house.chalkwing([
      'build',
      ...lessons.map(([id]) => id),
      ...['--aircraft', 'osier-15', '--date', '2031-05-06', '--browser', join(house.folder, 'none')],
    ]);
    built = {
      house,
      packet: (lesson) =>
        house.read(`dist/packets/${lesson}/osier-15.html`).catch(() => {
          throw new Error(`${lesson} was not built:\n${build.out}`);
        }),
      words: await house.ask<WordsAnswer>('src/desk/server/words.ts', 'it.wordsFor({}, [])'),
    };
  }, 120_000);

  it('the types hold', async () => {
    expect(await house.types()).toEqual({ code: 0, out: '' });
  }, 300_000);

  it.each(additions)('$name is there at once, wherever it is to be', ({ check }) => check(built), 60_000);
});
