import { defineConfig } from 'vitest/config';
import type { Reporter, TestModule, Vitest } from 'vitest/node';
import all from '../vitest.config.ts';

// For `npm run mutate`: of the group `rooms` the tests of one folder, named by `.ci/mutate.mjs`.

const rooms = all.test!.projects!.find(
  (each) => typeof each === 'object' && 'test' in each && each.test?.name === 'rooms',
) as { test: object };

/** A file of tests that does not even load has no failed test, and Stryker would take it for one that notices nothing. */
class Unloaded implements Reporter {
  #vitest: Vitest | undefined;

  onInit(vitest: Vitest) {
    this.#vitest = vitest;
  }

  onTestModuleEnd(module: TestModule) {
    for (const { message } of module.errors()) {
      this.#vitest?.state.catchError(new Error(`${module.moduleId} does not load: ${message}`), 'Unhandled Error');
    }
  }
}

export default defineConfig({
  test: {
    ...all.test,
    // They start nothing, and would look for what is left behind once for each change.
    setupFiles: [],
    reporters: [new Unloaded()],
    projects: [{ ...rooms, test: { ...rooms.test, include: [`${process.env.MUTATE_TESTS}/**/*.test.ts`] } }],
  },
} as Parameters<typeof defineConfig>[0]);
