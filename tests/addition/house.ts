import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const parts = ['src', 'components', 'lessons', 'tests', 'docs', 'schemas', 'package.json', 'tsconfig.json'];

export interface Ran {
  readonly code: number;
  readonly out: string;
}

/** A file of the house that is new, or another than it was. */
export interface Touched {
  readonly path: string;
  readonly isNew: boolean;
  /** Lines that were not in it before. */
  readonly lines: number;
}

type Files = ReadonlyMap<string, string>;

/** A copy of the sources in a folder of its own, to be added to as a developer adds to the sources. */
export class House {
  readonly folder: string;

  private constructor(folder: string) {
    this.folder = folder;
  }

  static async copy(): Promise<House> {
    const folder = await mkdtemp(join(tmpdir(), 'chalkwing-addition-'));
    for (const part of parts) await cp(join(root, part), join(folder, part), { recursive: true });
    await symlink(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction');
    return new House(folder);
  }

  async write(path: string, content: string): Promise<void> {
    await mkdir(dirname(join(this.folder, path)), { recursive: true });
    await writeFile(join(this.folder, path), content);
  }

  /** Of a file in the house. */
  path(name: string): string {
    return join(this.folder, name);
  }

  read(path: string): Promise<string> {
    return readFile(join(this.folder, path), 'utf8');
  }

  /** Puts `text` behind the one place that `after` finds. */
  async insert(path: string, after: RegExp, text: string): Promise<void> {
    const content = await this.read(path);
    const found = [...content.matchAll(new RegExp(after, 'g'))];
    if (found.length !== 1) throw new Error(`${path} has ${found.length} places ${after}, not one`);
    const end = found[0]!.index + found[0]![0].length;
    await this.write(path, content.slice(0, end) + text + content.slice(end));
  }

  /** Runs Node in the house; what is said on both outputs comes together. */
  node(args: readonly string[]): Promise<Ran> {
    return new Promise((resolve) => {
      execFile(process.execPath, args, { cwd: this.folder, maxBuffer: 1 << 28 }, (error, out, err) =>
        resolve({ code: error ? Number(error.code) : 0, out: out + err }),
      );
    });
  }

  chalkwing(args: readonly string[]): Promise<Ran> {
    return this.node(['src/cli/chalkwing.js', ...args]);
  }

  types(): Promise<Ran> {
    return this.node(['node_modules/typescript/bin/tsc', '--noEmit']);
  }

  /** What a module of the house gives, worked out in the house and told as JSON. */
  async ask<Answer>(module: string, expression: string): Promise<Answer> {
    const script = `const it = await import('./${module}'); process.stdout.write(JSON.stringify(${expression}))`;
    const { code, out } = await this.node(['--import', 'tsx', '--input-type=module', '--eval', script]);
    if (code !== 0) throw new Error(out);
    return JSON.parse(out) as Answer;
  }

  async files(): Promise<Files> {
    const files = new Map<string, string>();
    for (const part of parts.filter((each) => !each.includes('.'))) {
      const entries = await readdir(join(this.folder, part), { recursive: true, withFileTypes: true });
      for (const entry of entries.filter((each) => each.isFile())) {
        const path = join(entry.parentPath, entry.name);
        files.set(relative(this.folder, path).replaceAll('\\', '/'), await readFile(path, 'utf8'));
      }
    }
    return files;
  }

  async remove(): Promise<void> {
    await rm(this.folder, { recursive: true, force: true });
  }
}

export function touched(before: Files, now: Files): Touched[] {
  const paths = [...new Set([...before.keys(), ...now.keys()])].sort();
  return paths.flatMap((path) => {
    const [old, made] = [before.get(path), now.get(path) ?? ''];
    if (old === made) return [];
    const there = new Set(old?.split('\n'));
    const lines = made.split('\n').filter((line) => !there.has(line)).length;
    return [{ path, isNew: old === undefined, lines }];
  });
}
