import { expect } from 'vitest';
import type { Addition } from './addition.ts';

const format = `import type { Format } from './format.ts';

/** The title of a document, and no more. */
export const write: Format['write'] = ({ title }) => \`\${title}\\n\`;
`;

const lesson = `---
title: A title to be written
---

::keys
`;

/** Its file and its row. */
export const outputFormat: Addition = {
  name: 'an output format',
  add: async (house) => {
    await house.write('src/press/formats/titles.ts', format);
    await house.insert(
      'src/press/formats/list.ts',
      /ending: 'txt'.*\n/,
      "  { ending: 'titles', write: whenWanted(() => import('./titles.ts')) },\n",
    );
  },
  mayMake: ['src/press/formats/titles.ts'],
  mayChange: { 'src/press/formats/list.ts': 1 },
  lessons: { 'a-title': lesson },
  check: async ({ house }) => {
    // With a browser: what lacks one of its formats is not entered in the ledger.
    const build = await house.chalkwing([
      'build',
      'a-title',
      '--aircraft',
      'osier-15',
      '--date',
      '2031-05-06',
    ]);
    expect(build).toMatchObject({ code: 0, out: expect.stringContaining('.titles') });
    expect(await house.read('dist/packets/a-title/osier-15.titles')).toContain('A title to be written');
    const kept = JSON.parse(await house.read('dist/packets/.printed/a-title/osier-15.json')) as {
      files: Record<string, unknown>;
    };
    expect(Object.keys(kept.files)).toContain('titles');
  },
};
