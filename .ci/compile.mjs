// Compiles what the npm package holds into dist/lib: the command, the entries of package.json's `exports`, whatever
// they import, and the files beside them that are read while they run (fonts, published figures, starters).
import { spawnSync } from 'node:child_process';
import { cpSync, rmSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const out = join(root, 'dist', 'lib');
rmSync(out, { recursive: true, force: true });

const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');
const { status } = spawnSync(process.execPath, [compiler, '--project', join(root, '.ci', 'tsconfig.package.json')], {
  // npm gives standard output to whoever asked for the name of the package file.
  stdio: ['ignore', process.stderr, process.stderr],
});
if (status !== 0) process.exit(status ?? 1);

const isRead = (path) =>
  statSync(path).isDirectory() || !(['.ts', '.js'].includes(extname(path)) || basename(path) === 'README.md');
cpSync(join(root, 'src'), join(out, 'src'), { recursive: true, filter: isRead });
