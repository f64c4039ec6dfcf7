// Runs every check of the project, and ends with a line that counts the tests: `N passed, N failed`. A failing check
// other than the tests counts as one failure.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { leftBehind, markOwn } from '../tests/left-behind.ts';

markOwn();
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';

let failed = 0;
for (const check of ['types', 'style', 'imports']) {
  const { status } = spawnSync(npm, ['run', '--silent', check], { stdio: 'inherit' });
  process.stdout.write(`${check}: ${status === 0 ? 'right' : 'WRONG'}\n`);
  if (status !== 0) failed++;
}

const folder = mkdtempSync(join(tmpdir(), 'chalkwing-tests-'));
const outcome = join(folder, 'outcome.json');
spawnSync(
  npm,
  ['exec', '--no', '--', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${outcome}`],
  { stdio: 'inherit' },
);
let passed = 0;
try {
  const { numPassedTests, numFailedTests, success } = JSON.parse(readFileSync(outcome, 'utf8'));
  passed = numPassedTests;
  failed += numFailedTests;
  // A test file that does not even load has no failed test of its own.
  if (!success && numFailedTests === 0) failed++;
} catch {
  process.stdout.write('The tests gave no outcome.\n');
  failed++;
}
rmSync(folder, { recursive: true, force: true });
const left = await leftBehind();
if (left.length > 0) {
  process.stdout.write(`Processes that the tests have left behind:\n${left.join('\n')}\n`);
  failed++;
}
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
