// Compiles what the npm package holds into dist/lib: the command, what other programs may import (src/entries), whatever
// they import, the files beside them that are read at run time (fonts, published figures, starters), and the scripts
// of the study page and the desk.
import { spawnSync } from 'node:child_process';
import { cpSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, extname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const out = join(root, 'dist', 'lib');
rmSync(out, { recursive: true, force: true });

const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');
const { status } = spawnSync(process.execPath, [compiler, '--project', join(root, '.ci', 'tsconfig.package.json')], {
  // npm hands standard output to the caller that asked for the name of the package file.
  stdio: ['ignore', process.stderr, process.stderr],
});
if (status !== 0) process.exit(status ?? 1);

const isRead = (path) =>
  statSync(path).isDirectory()
    ? basename(path) !== 'snapshots'
    : !(['.ts', '.js'].includes(extname(path)) || basename(path) === 'README.md');
cpSync(join(root, 'src'), join(out, 'src'), { recursive: true, filter: isRead });

// No module imports what runs in a page: the bundler of this clone makes it, and puts it beside the module that reads
// it.
const from = (...path) => import(pathToFileURL(join(out, ...path)).href);
const study = join('src', 'press', 'study');
const { bundleFile, bundleStudy } = await from(study, 'study-bundle.js');
writeFileSync(join(out, study, bundleFile), bundleStudy(join(root, study)));

const desk = join('src', 'desk', 'page');
const { bundlePage, pagePrograms } = await from('src', 'desk', 'server', 'page-bundle.js');
for (const program of pagePrograms)
  writeFileSync(join(out, desk, program), await bundlePage(join(root, desk), program));
