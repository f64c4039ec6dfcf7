import { defineConfig } from 'vitest/config';
import all from '../vitest.config.ts';

// For `npm run mutate`: of the group `rooms` the tests of one folder, named by `.ci/mutate.mjs`.

const rooms = all.test!.projects!.find(
  (each) => typeof each === 'object' && 'test' in each && each.test?.name === 'rooms',
) as { test: object };

export default defineConfig({
  test: {
    ...all.test,
    // They start nothing, and would look for what is left behind once for each change.
    setupFiles: [],
    projects: [
      { ...rooms, test: { ...rooms.test, include: [`${process.env.MUTATE_TESTS}/**/*.test.ts`] } },
    ],
  },
} as Parameters<typeof defineConfig>[0]);
