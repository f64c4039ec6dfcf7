import { execFile } from 'node:child_process';
import {
  chmod,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rename,
  rm,
  stat,
  symlink,
  writeFile,
} from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { planToJson } from '../src/export/plan-json.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { KeyPosition } from '../src/flight/terms/plan.ts';
import { metresPerFoot } from '../src/units/factors.ts';
import { requestFor, windOffRunway } from './flight-school.ts';
import { type Offered, offeredTypes } from './offered-types.ts';

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

/** What a program with a pipeline of its own installs beside the package. */
const ofPrograms = ['rehype-stringify', 'remark-rehype'];

/** As npm would lay it out. */
async function install(): Promise<string> {
  const home = join(folder, 'own-folder');
  const modules = join(home, 'node_modules');
  await mkdir(join(modules, '.bin'), { recursive: true });
  await writeFile(join(home, 'package.json'), '{ "private": true }\n');
  await rename(join(folder, 'package'), join(modules, 'chalkwing'));
  const named = Object.keys({ ...packageFile.dependencies, ...packageFile.optionalDependencies });
  for (const name of [...named, ...ofPrograms]) {
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

const chalkwing = (...args: readonly string[]) =>
  run(npm.replace('npm', 'npx'), ['--no', '--', 'chalkwing', ...args], installed, offline);

describe('installed in an empty folder, without a network', () => {
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
});

/** The faces of the package that are programs, by their names in `exports`. */
const faces = () =>
  Object.entries(packageFile.exports).flatMap(([name, path]) =>
    path.endsWith('.js') ? [[name.slice('./'.length), path] as const] : [],
  );

describe('what the package offers', () => {
  let offered: Offered;

  beforeAll(() => {
    const home = join(installed, 'node_modules', 'chalkwing');
    const declarations = faces().map(
      ([face, path]) => [face, join(home, path.replace(/\.js$/, '.d.ts'))] as const,
    );
    offered = offeredTypes(Object.fromEntries(declarations), (file) => file.includes('/chalkwing/dist/'));
  });

  it('is every face of src/entries', async () => {
    const entries = await readdir(join(root, 'src', 'entries'));
    expect(
      faces()
        .map(([face]) => `${face}.ts`)
        .sort(),
    ).toEqual(entries.sort());
  });

  it('has a name that can be imported for every type it mentions', () => {
    expect(offered.names).toContain('page contextFor');
    expect(offered.unnamed).toEqual([]);
  });

  it('is described, and offered once', () => {
    expect(offered.undescribed).toEqual([]);
    const names = offered.names.map((each) => each.split(' ')[1]!).filter((name) => name !== 'default');
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  it.each([
    ['node16', 'node16'],
    ['es2022', 'bundler'],
  ])(
    'has types that a strict program of module %s, resolved as by %s, compiles with',
    async (module, resolution) => {
      expect(await compile(await writeProgram(offered), module, resolution)).toEqual({
        code: 0,
        out: '',
        err: '',
      });
      await expect(stat(join(installed, resolution, 'own.d.mts'))).resolves.toBeDefined();
    },
  );

  it('is all that a page of figures takes: the example of README.md, compiled and run', async () => {
    expect(await chalkwing('new', 'school', 'lessons')).toMatchObject({ code: 0, err: '' });
    expect(await compile(await writeProgram(offered), 'nodenext', 'nodenext')).toMatchObject({
      code: 0,
      out: '',
    });
    const ran = await run(process.execPath, [join('nodenext', 'own.mjs')], installed, offline);
    expect(ran).toMatchObject({ code: 0, err: '' });
    const { page, messages, profile, alone, said, cautions, style, keys, wrong } = JSON.parse(ran.out);
    expect({ messages, said }).toEqual({ messages: [], said: [] });
    const [, onPage] = /<p>Turn base at ([\d,]+)\u00a0ft\.<\/p>/.exec(page)!;
    const [, drawn] = /^([\d,]+)\u00a0ft$/.exec(alone[0].value)!;
    // Both are rounded to 10 ft.
    expect(Math.abs(feetOf(onPage!) - feetAt('base-turn', keys))).toBeLessThanOrEqual(5);
    expect(Math.abs(feetOf(drawn!) - feetAt('base-key', keys))).toBeLessThanOrEqual(5);
    expect(page).toMatch(/<figure[^>]*>.*<svg.*<\/figure>/s);
    expect(profile).toMatchObject([{ type: 'element', tagName: 'figure' }]);
    expect(JSON.stringify(cautions)).toContain('It does not replace instruction');
    expect(style).toContain('@font-face');
    expect(wrong).toEqual(['NotToBeFlownError', 'runway']);
  });
});

const feetOf = (printed: string) => Number(printed.replace(',', ''));

function feetAt(key: string, keys: readonly KeyPosition[]): number {
  return keys.find(({ id }) => id === key)!.height / metresPerFoot;
}

const compiler = join(
  dirname(createRequire(import.meta.url).resolve('typescript/package.json')),
  'bin',
  'tsc',
);

/** With the declarations of its dependencies checked as well. */
function compile(file: string, module: string, resolution: string): Promise<Ended> {
  const options = ['--strict', '--declaration', '--target', 'es2022', '--outDir', resolution];
  return run(
    process.execPath,
    [compiler, ...options, '--module', module, '--moduleResolution', resolution, file],
    installed,
  );
}

/**
 * A program that imports nothing but the package's exports and unified's own packages: the example of README.md; what it
 * made and what the core plans for the same request, to be written out; and every name that is exported.
 */
async function writeProgram(offered: Offered): Promise<string> {
  const readme = await readFile(join(root, 'README.md'), 'utf8');
  const example = /```ts\n(import \{ components \}.*?)```/s.exec(readme)![1]!;
  const named = offered.names.map((each) => {
    const [face, name] = each.split(' ') as [string, string];
    return `export type { ${name}${name === 'default' ? ` as ${face}` : ''} } from 'chalkwing/${face}';`;
  });
  const text = `import rehypeStringify from 'rehype-stringify';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
${example}
import { defineComponent, type PacketContext } from 'chalkwing/components';
import { type Plan, planApproach, type PlanRequest, planToJson } from 'chalkwing/flight';
import { NotToBeFlownError, pageCautions, pageStyle, picturesIn, ScenarioError } from 'chalkwing/page';
import { z } from 'zod';
${named.join('\n')}

const { defaults, minimums } = school;
const airfield = school.airfields.get(defaults.airfield)!;
export const own = planApproach({
  aircraft: school.fleet.get(defaults.aircraft)!,
  airfield,
  runway: airfield.runways.find(({ name }) => name === defaults.runway)!,
  approach: '180',
  power: 'idle',
  wind: parseWind('230/10kt'),
  minimums,
});
const refused = (make: () => unknown): unknown => {
  try {
    return make();
  } catch (error) {
    if (error instanceof NotToBeFlownError) return error.name;
    return error instanceof ScenarioError ? error.key : error;
  }
};
const alone = drawDirective(':key[base-key]{show=height}', context);
console.log(JSON.stringify({
  page: String(page),
  messages: page.messages.map(String),
  profile: nodes,
  alone: alone.nodes,
  said: alone.messages.map(String),
  cautions: pageCautions(context),
  style: pageStyle('A4'),
  keys: own.keys,
  wrong: [
    refused(() => contextFor({ school, wind: parseWind('172/20kt') })),
    refused(() => contextFor({ school, runway: '42' })),
  ],
}));

// What is inferred from the package can be written in declarations of one's own.
export { alone, context, files, nodes, page, pipeline, school };
export const json = planToJson(own);
export const pictures = picturesIn('lessons');
export const wordOfOwn = defineComponent<PacketContext, z.ZodType>({
  name: 'word',
  form: 'text',
  summary: 'A word.',
  attributes: z.strictObject({}),
  example: ':word',
  render: ({ context: { plan } }) => [{ type: 'text', value: plan.aircraft.name }],
});
export const height: number = own.keys[0]!.height;
// @ts-expect-error There is no such approach.
export const wrong: PlanRequest['approach'] = '270';
// @ts-expect-error A plan's height is a number.
export const words: string = (own as Plan).keys[0]!.height;
// @ts-expect-error A school is read, not named.
export const unread = () => contextFor({ school: 'lessons' });
`;
  await writeFile(join(installed, 'own.mts'), text);
  return 'own.mts';
}

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
