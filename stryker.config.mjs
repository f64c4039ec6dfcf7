// For `npm run mutate` (.ci/mutate.mjs), which says what is changed and by which tests it is to be noticed.

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: '.ci/vitest.mutate.config.ts', related: false },
  ignorePatterns: ['dist'],
  tempDirName: 'dist/mutation/tmp',
  cleanTempDir: 'always',
  concurrency: 2,
  incremental: true,
  // Ended at the first failure, a run now and then loses that failure.
  disableBail: true,
  reporters: ['progress-append-only', 'clear-text', 'json', 'html'],
  clearTextReporter: { reportTests: false, reportScoreTable: false, skipFull: true },
  warnings: { slow: false },
};
