import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['src/**/*.test.ts', 'components/**/*.test.ts', 'tests/**/*.test.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // Many tests wait for a browser or a command: one worker would leave the second core idle.
    maxWorkers: 2,
  },
});
