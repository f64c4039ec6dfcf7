// Changes the code, one small change at a time, and says which changes no test notices (Stryker; stryker.config.mjs).
//   npm run mutate                       all folders of src/flight, src/drawing, src/words and src/press: hours
//   npm run mutate -- src/words/figures  one folder, and those in it
//   npm run mutate -- src/words/figures --tests src/words
// A test stands beside its module: a folder is asked of its own tests, one without any of those of the folder that it
// lies in; `--tests` names another. What is unchanged since the last run is not tried again, unless `--again` says so: a
// change in what is made while a module is loaded stays as it was found, whatever tests have come since.
import { readdirSync, statSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';

const rooms = ['src/flight', 'src/drawing', 'src/words', 'src/press'];
/** What only tests use. */
const ofTests = [
  'src/drawing/kit/svg-reading.ts',
  'src/drawing/labels/nothing-hidden.ts',
  'src/drawing/shared/test-plans.ts',
  'src/drawing/snapshots/normal-form.ts',
];
/** %: files below it are listed. */
const wanted = 80;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { tests: { type: 'string' }, again: { type: 'boolean' } },
});
const asked = (positionals.length > 0 ? positionals : rooms).map((each) => relative('.', each).split(sep).join('/'));
for (const folder of asked) {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() && rooms.some((room) => `${folder}/`.startsWith(`${room}/`))) continue;
  process.stderr.write(`\`${folder}\` is no folder of ${rooms.join(', ')}: write \`npm run mutate -- src/words/figures\`\n`);
  process.exit(2);
}

const entries = (folder) => readdirSync(folder, { withFileTypes: true });
const foldersIn = (folder) => [
  folder,
  ...entries(folder).flatMap((each) => (each.isDirectory() ? foldersIn(`${folder}/${each.name}`) : [])),
];
const isTest = (name) => name.endsWith('.test.ts') && !name.endsWith('.whole.test.ts');
const codeIn = (folder) =>
  entries(folder)
    .map(({ name }) => `${folder}/${name}`)
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.test.ts') && !ofTests.includes(path));
const holdsTests = (folder) =>
  foldersIn(folder).some((each) => entries(each).some(({ name }) => isTest(name)));
const testsOf = (folder) => (holdsTests(folder) || rooms.includes(folder) ? folder : testsOf(dirname(folder)));

/** A file of tests that does not load with the change has noticed it: Stryker calls that a `RuntimeError`. */
const noticing = new Set(['Killed', 'Timeout', 'RuntimeError']);
/** By file: how many changes were tried, and how many noticed. */
const files = new Map();
for (const folder of asked.flatMap(foldersIn)) {
  const mutate = codeIn(folder);
  if (mutate.length === 0) continue;
  const tests = values.tests ?? testsOf(folder);
  const name = join('dist/mutation', folder.replaceAll('/', '-'));
  process.stdout.write(`${folder}, with the tests in ${tests}\n`);
  process.env.MUTATE_TESTS = tests;
  const results = await new Stryker({
    mutate,
    force: values.again ?? false,
    incrementalFile: `${name}.incremental.json`,
    jsonReporter: { fileName: `${name}.json` },
    htmlReporter: { fileName: `${name}.html` },
  })
    .runMutationTest()
    .catch(({ message }) => {
      process.stderr.write(`${folder} was left out: ${message}\nDo its tests pass? \`npx vitest run ${tests}\` says.\n`);
      process.exitCode = 1;
      return [];
    });
  for (const { fileName, status } of results) {
    const file = relative('.', fileName).split(sep).join('/');
    const { tried = 0, noticed = 0 } = files.get(file) ?? {};
    if (!noticing.has(status) && status !== 'Survived' && status !== 'NoCoverage') continue;
    files.set(file, { tried: tried + 1, noticed: noticed + (noticing.has(status) ? 1 : 0) });
  }
}

const percent = ({ tried, noticed }) => (tried === 0 ? 100 : (100 * noticed) / tried);
const sum = (rows) =>
  rows.reduce((all, row) => ({ tried: all.tried + row.tried, noticed: all.noticed + row.noticed }), { tried: 0, noticed: 0 });
const line = (name, row) => `${percent(row).toFixed(1).padStart(6)} %  ${row.noticed} of ${row.tried}  ${name}\n`;
const rows = [...files].sort(([, a], [, b]) => percent(a) - percent(b));
const under = rows.filter(([, row]) => percent(row) < wanted);
process.stdout.write('\nChanges that a test noticed:\n');
for (const [name, row] of rows) process.stdout.write(line(name, row));
process.stdout.write(line('in all', sum([...files.values()])));
if (under.length > 0) process.stdout.write(`Below ${wanted} %: ${under.map(([name]) => name).join(', ')}\n`);
