// Compiles what the npm package holds into dist/lib: the command, the entries of package.json's `exports`, whatever
// they import, the files beside them that are read while they run (fonts, published figures, starters), and the script
// of the study page.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, extname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

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

// It runs in a page, and no module imports it: the bundler of this clone makes it ready beside the one that reads it.
const study = join('src', 'press', 'study');
const reader = join(out, study, 'study-bundle.js');
if (existsSync(reader)) {
  const { bundleFile, bundleStudy } = await import(pathToFileURL(reader).href);
  writeFileSync(join(out, study, bundleFile), bundleStudy(join(root, study)));
}

// So does the desk's page.
const desk = join('src', 'desk', 'page');
if (existsSync(join(root, desk, 'app.ts'))) {
  await build({
    entryPoints: [join(root, desk, 'app.ts')],
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    outfile: join(out, desk, 'app.js'),
    logLevel: 'warning',
  });
}
