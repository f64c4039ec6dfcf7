import { execFile } from 'node:child_process';
import { chmod, mkdir, mkdtemp, readFile, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planToJson } from '../src/export/plan-json.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import { requestFor, windOffRunway } from './flight-school.ts';

/*
 * The npm package as a school gets it: packed, and unpacked into an empty folder. Beside it are the packages that its
 * own package file names, taken from this project's, and no other: an import of one that it does not name fails.
 */

const root = fileURLToPath(new URL('..', import.meta.url));
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
/** Nobody answers at the discard port: whatever asked the network would fail. */
const nowhere = 'http://127.0.0.1:9/';
const offline = {
  npm_config_offline: 'true',
  npm_config_registry: nowhere,
  http_proxy: nowhere,
  https_proxy: nowhere,
  HTTP_PROXY: nowhere,
  HTTPS_PROXY: nowhere,
};

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function run(
  program: string,
  args: readonly string[],
  cwd: string,
  env: Record<string, string> = {},
): Promise<Ended> {
  return new Promise((end) => {
    execFile(
      program,
      args,
      { cwd, env: { ...process.env, ...env }, maxBuffer: 1 << 26, shell: process.platform === 'win32' },
      (error, out, err) => end({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

interface PackageFile {
  readonly bin: Readonly<Record<string, string>>;
  readonly exports: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly optionalDependencies: Readonly<Record<string, string>>;
}

let folder: string;
let packed: readonly string[];
let installed: string;
let packageFile: PackageFile;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'chalkwing-package-'));
  const { code, out, err } = await run(
    npm,
    ['pack', '--json', '--ignore-scripts=false', '--pack-destination', folder],
    root,
    offline,
  );
  if (code !== 0) throw new Error(`npm pack failed\n${err}`);
  // What comes before the list is what an older npm says about the script that compiles.
  const [{ filename, files }] = JSON.parse(out.slice(out.search(/^\[/m))) as [
    { filename: string; files: { path: string }[] },
  ];
  packed = files.map(({ path }) => path);
  const unpacked = await run('tar', ['-xzf', filename], folder);
  if (unpacked.code !== 0) throw new Error(`The package does not unpack\n${unpacked.err}`);
  packageFile = JSON.parse(await readFile(join(folder, 'package', 'package.json'), 'utf8'));
  installed = await install();
});

afterAll(() => rm(folder, { recursive: true, force: true }));

/** As npm would lay it out. */
async function install(): Promise<string> {
  const home = join(folder, 'own-folder');
  const modules = join(home, 'node_modules');
  await mkdir(join(modules, '.bin'), { recursive: true });
  await writeFile(join(home, 'package.json'), '{ "private": true }\n');
  await rename(join(folder, 'package'), join(modules, 'chalkwing'));
  for (const name of Object.keys({ ...packageFile.dependencies, ...packageFile.optionalDependencies })) {
    await mkdir(dirname(join(modules, name)), { recursive: true });
    await symlink(join(root, 'node_modules', name), join(modules, name), 'dir');
  }
  const command = join(modules, 'chalkwing', packageFile.bin.chalkwing!);
  await chmod(command, 0o755);
  await symlink(command, join(modules, '.bin', 'chalkwing'));
  return home;
}

describe('the packed package', () => {
  it('holds what is compiled and read, and no source, test or lesson', () => {
    const unexpected = packed.filter(
      (path) =>
        !/^(package\.json|README\.md|LICENSE|CHANGELOG\.md|src\/cli\/chalkwing\.js)$/.test(path) &&
        !/^schemas\/[a-z-]+\.(schema|code-snippets)\.json$/.test(path) &&
        !/^dist\/lib\/(src|components)\/.+(\.js|\.d\.ts)$/.test(path) &&
        !/^dist\/lib\/src\/(press\/paper\/fonts|checks|school\/starters)\/[^/]+$/.test(path) &&
        !/^dist\/lib\/src\/desk\/page\/(index\.html|app\.css)$/.test(path),
    );
    expect(unexpected).toEqual([]);
    expect(packed.filter((path) => /\.test\.|trial-|test-/.test(path))).toEqual([]);
    for (const kind of ['aircraft', 'airfield', 'faults', 'lesson', 'school']) {
      expect(packed).toContain(`schemas/${kind}.schema.json`);
    }
  });

  it('has every file that its package file offers', () => {
    const offered = [...Object.values(packageFile.bin), ...Object.values(packageFile.exports)];
    const files = offered.filter((path) => !path.includes('*')).map((path) => path.replace(/^\.\//, ''));
    expect(files.filter((path) => !packed.includes(path))).toEqual([]);
    const scripts = files.filter((path) => path.startsWith('dist/lib/'));
    expect(scripts.length).toBeGreaterThan(1);
    expect(scripts.filter((path) => !packed.includes(path.replace(/\.js$/, '.d.ts')))).toEqual([]);
  });

  it('imports no package that its package file does not name', async () => {
    const named = new Set(Object.keys({ ...packageFile.dependencies, ...packageFile.optionalDependencies }));
    const strangers: string[] = [];
    // What is bundled for a browser has all it needs in it.
    const bundles = ['desk/page/app.js', 'desk/page/printed-view.js', 'press/study/study.bundle.js'].map(
      (path) => `dist/lib/src/${path}`,
    );
    expect(bundles.filter((path) => !packed.includes(path))).toEqual([]);
    const modules = packed.filter((path) => /^dist\/lib\/.+\.(js|d\.ts)$/.test(path));
    for (const path of modules.filter((each) => !bundles.includes(each))) {
      const text = await readFile(join(installed, 'node_modules', 'chalkwing', path), 'utf8');
      for (const [, imported] of text.matchAll(/(?:\bfrom |\bimport\(|^import )['"]([^'".][^'"]*)['"]/gm)) {
        if (imported!.startsWith('node:')) continue;
        const name = /^(@[^/]+\/)?[^/]+/.exec(imported!)![0];
        const typesAlone = path.endsWith('.d.ts') && named.has(`@types/${name}`);
        if (!named.has(name) && !typesAlone) strangers.push(`${path}: ${name}`);
      }
    }
    expect(strangers).toEqual([]);
  });
});

describe('installed in an empty folder, without a network', () => {
  const chalkwing = (...args: readonly string[]) =>
    run(npm.replace('npm', 'npx'), ['--no', '--', 'chalkwing', ...args], installed, offline);

  it('starts a school, finds it right, and prints its packet', async () => {
    expect(await chalkwing('new', 'school', 'school')).toMatchObject({ code: 0, err: '' });
    expect(await chalkwing('check', '--school', 'school')).toMatchObject({
      code: 0,
      out: expect.stringContaining('0 errors, 0 warnings'),
    });
    const built = await chalkwing('build', '--school', 'school');
    expect(built).toMatchObject({ code: 0, err: '' });
    const packet = join(installed, 'dist', 'packets', 'first-lesson', 'crack-willow-12');
    expect(await readFile(`${packet}.html`, 'utf8')).toContain('Crack Willow 12');
    expect((await readFile(`${packet}.pdf`)).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('prints the checks against published figures', async () => {
    const { code, out, err } = await chalkwing('checks', '--school', 'school');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('checks.pdf');
  });

  it('computes the plan that the sources compute, to the last digit', async () => {
    const request = requestFor('osier', { wind: windOffRunway(-30, 10) });
    await writeFile(join(installed, 'request.json'), JSON.stringify(request));
    await writeFile(
      join(installed, 'plan.mjs'),
      `import { readFileSync } from 'node:fs';
       import { planApproach, planToJson } from 'chalkwing/flight';
       const request = JSON.parse(readFileSync('request.json', 'utf8'));
       process.stdout.write(JSON.stringify(planToJson(planApproach(request))));`,
    );
    const { out, err } = await run(process.execPath, ['plan.mjs'], installed, offline);
    expect(err).toBe('');
    expect(out).toBe(JSON.stringify(planToJson(planApproach(request))));
  });

  it('gives types that a strict program compiles with, and that refuse a wrong one', async () => {
    await writeFile(
      join(installed, 'own.mts'),
      `import { components } from 'chalkwing/components';
       import { type Plan, type PlanRequest, planApproach, planToJson } from 'chalkwing/flight';
       import rehypeLesson from 'chalkwing/rehype';
       import remarkLesson from 'chalkwing/remark';
       import remarkParse from 'remark-parse';
       import { unified } from 'unified';

       declare const request: PlanRequest;
       const plan: Plan = planApproach(request);
       export const height: number = plan.keys[0]!.height;
       export const json = planToJson(plan);
       export const pipeline = unified().use(remarkParse).use(remarkLesson, { components });
       export const second: typeof rehypeLesson = rehypeLesson;
       // @ts-expect-error There is no such approach.
       export const wrong: PlanRequest['approach'] = '270';
       // @ts-expect-error A plan's height is a number.
       export const words: string = plan.keys[0]!.height;`,
    );
    const compiler = join(
      dirname(createRequire(import.meta.url).resolve('typescript/package.json')),
      'bin',
      'tsc',
    );
    const options = ['--noEmit', '--strict', '--skipLibCheck', '--target', 'es2022', '--module', 'nodenext'];
    const { out } = await run(process.execPath, [compiler, ...options, 'own.mts'], installed);
    expect(out).toBe('');
  });
});

it('in a clone, compiled files are never run, however old they are', async () => {
  const clone = join(folder, 'clone');
  const command = join(clone, 'src', 'cli', 'chalkwing.js');
  const compiled = join(clone, 'dist', 'lib', 'src', 'cli', 'main.js');
  for (const path of [command, compiled]) await mkdir(dirname(path), { recursive: true });
  await writeFile(join(clone, 'package.json'), '{ "type": "module" }\n');
  await symlink(join(root, 'node_modules'), join(clone, 'node_modules'), 'dir');
  await writeFile(command, await readFile(join(root, 'src', 'cli', 'chalkwing.js')));
  await writeFile(compiled, "process.stdout.write('compiled');\n");
  await writeFile(join(clone, 'src', 'cli', 'main.ts'), "process.stdout.write('sources' as string);\n");
  expect(await run(process.execPath, [command], clone)).toMatchObject({ code: 0, out: 'sources' });
});
