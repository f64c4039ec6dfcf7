import { expect } from 'vitest';
import { wordsOf } from '../packet-school.ts';
import type { Addition } from './addition.ts';

const method = `import type { ApproachMethod } from './approach-method.ts';
import { abeam, solveFrom } from './approach-180.ts';

/** A half circuit flown half as far out again. */
export const approachWide: ApproachMethod = {
  id: 'wide',
  startsAt: 'downwind-key',
  usualStart: 'pattern',
  finds: ['past-abeam'],
  hasOwnSpacing: true,
  options: {},
  solve: (asked, conditions) => {
    const wide = { ...asked, spacing: 1.5 * asked.spacing };
    return solveFrom(abeam(wide, conditions), wide, conditions);
  },
};
`;

const names = `
  wide: {
    title: 'Wide approach',
    full: 'Wide power-off approach',
    spoken: 'wide approach',
    startHeight: 'Height at the wide key',
  },`;

const lesson = `---
title: Far out
approach: wide
wind: 210/6kt
height: 1100ft
---

::pattern

::keys
`;

/** Its file, its id, its row and its words. */
export const approach: Addition = {
  name: 'an approach',
  add: async (house) => {
    await house.write('src/flight/approaches/approach-wide.ts', method);
    await house.insert('src/flight/terms/approach.ts', /approachIds = \[[^\]]*'spiral'/, ", 'wide'");
    const list = 'src/flight/approaches/approaches.ts';
    await house.insert(
      list,
      /approach-spiral\.ts';\n/,
      "import { approachWide } from './approach-wide.ts';\n",
    );
    await house.insert(list, /spiral: approachSpiral,\n/, '  wide: approachWide,\n');
    await house.insert('src/words/approaches/approach-names.ts', /top of the spiral',\n {2}\},/, names);
  },
  mayMake: ['src/flight/approaches/approach-wide.ts'],
  mayChange: {
    'src/flight/approaches/approaches.ts': 2,
    'src/flight/terms/approach.ts': 1,
    // A brace alone is no line of its own.
    'src/words/approaches/approach-names.ts': 5,
  },
  lessons: { 'far-out': lesson },
  check: async ({ house, packet, words }) => {
    const html = await packet('far-out');
    expect(html).toContain('Wide power-off approach');
    // Half as far out again as the pattern's 500 m, on the drawing and in the table.
    expect(html).toMatch(/<title[^>]*>Wide approach to runway 24/);
    expect(wordsOf(html)).toContain('abeam the spot, 750 m to the left');
    expect(html).toContain('"approach":"wide"');

    const card = await house.chalkwing([
      'card',
      ...['--approach', 'wide', '--aircraft', 'osier-15', '--date', '2031-05-06'],
      ...['--wind', '210/6kt', '--height', '1100ft'],
    ]);
    expect(card.out).toContain('osier-15-fallow-reach-24-wide');
    const plan = await house.chalkwing([
      'plan',
      ...['--aircraft', 'lessons/fleet/osier-15.yaml', '--airfield', 'lessons/airfields/fallow-reach.yaml'],
      ...['--runway', '24', '--approach', 'wide', '--wind', '210/6kt', '--height', '1100ft'],
    ]);
    expect(plan).toMatchObject({
      code: 0,
      out: expect.stringContaining('Osier 15, wide approach, engine idle'),
    });

    expect(JSON.stringify(words)).toContain('"wide"');
    expect(await house.read('docs/lesson-language.md')).toContain('`wide`');
    expect(await house.read('schemas/lesson.schema.json')).toContain('"wide"');
    expect(await house.read('schemas/school.schema.json')).toContain('"wide"');
  },
};
