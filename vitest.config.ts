import { defineConfig } from 'vitest/config';

/** ms. Tests wait for what is to happen, never for a time: this only ends a wait for something that never happens. */
const safetyNet = 900_000;

export default defineConfig({
  test: {
    testTimeout: safetyNet,
    hookTimeout: safetyNet,
    teardownTimeout: safetyNet,
    expect: { poll: { timeout: safetyNet } },
    setupFiles: ['tests/setup/nothing-left-behind.ts'],
    // Many tests wait for a browser or a command: with one worker the second core would be idle.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['src/**/*.test.ts', 'components/**/*.test.ts'],
          exclude: ['**/*.whole.test.ts'],
          // All files of a worker share modules that are loaded once: no test of a room may leave anything in them.
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
