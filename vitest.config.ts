import { defineConfig } from 'vitest/config';

/** ms. Tests wait for what is to happen, never for a time: this only ends one for which it never does. */
const safetyNet = 900_000;

export default defineConfig({
  test: {
    testTimeout: safetyNet,
    hookTimeout: safetyNet,
    teardownTimeout: safetyNet,
    expect: { poll: { timeout: safetyNet } },
    setupFiles: ['tests/setup/nothing-left-behind.ts'],
    // Many tests wait for a browser or a command: one worker would leave the second core idle.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['src/**/*.test.ts', 'components/**/*.test.ts'],
          exclude: ['**/*.whole.test.ts'],
          // Modules are loaded once for all files of a worker: no test of a room leaves anything in them.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'whole',
          include: ['tests/**/*.test.ts', 'src/**/*.whole.test.ts'],
          globalSetup: ['tests/setup/shared-by-all.ts'],
        },
      },
    ],
  },
});
