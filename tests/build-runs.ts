import { type ChildProcess, spawn } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { lessonOf } from './packet-school.ts';

const command = fileURLToPath(new URL('../src/cli/chalkwing.js', import.meta.url));

/** Two lessons that print quickly. The first has a warning: what it says in HTML is left out. */
export const trialLessons = {
  one: lessonOf(
    'At :key[base-key]{show=height} <b>look</b> at the spot.\n\n::keys\n\n:::instructor\nAsk.\n:::',
  ),
  two: lessonOf('The wind is :wind[headwind] on the nose.\n\n::pattern'),
} as const;

/** How a build has ended: its exit code (null where a signal ended it) and what it said. */
export interface Ended {
  readonly code: number | null;
  readonly err: string;
  readonly out: string;
}

/** A build that is running. */
export interface Running {
  readonly process: ChildProcess;
  readonly ended: Promise<Ended>;
  /** Waits until it has said so on standard error. */
  readonly said: (what: RegExp) => Promise<void>;
}

/** Starts `chalkwing build` in a folder and does not wait for it. */
export function startBuild(folder: string, args: readonly string[]): Running {
  const started = spawn(process.execPath, [command, 'build', ...args], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [out, err] = ['', ''];
  started.stdout.on('data', (text) => {
    out += text;
  });
  started.stderr.on('data', (text) => {
    err += text;
  });
  const ended = new Promise<Ended>((resolve) => {
    started.on('close', (code) => resolve({ code, err, out }));
  });
  const said = (what: RegExp) =>
    new Promise<void>((resolve, reject) => {
      const look = () => {
        if (what.test(err)) resolve();
      };
      started.stderr.on('data', look);
      started.on('close', () => reject(new Error(`It ended without saying ${what}:\n${err}`)));
      look();
    });
  return { process: started, ended, said };
}

/** The files under a folder by their path, with what is in them. */
export async function contents(folder: string): Promise<Map<string, string>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const found = new Map<string, string>();
  for (const path of files.sort()) found.set(relative(folder, path), await readFile(path, 'latin1'));
  return found;
}

/** The packets alone: what a reader of the folder sees. */
export function packetsOnly(files: ReadonlyMap<string, string>): Map<string, string> {
  return new Map([...files].filter(([path]) => !path.startsWith('.printed')));
}

/** Temporary files, which a build that has ended must not leave. */
export function temporaries(files: ReadonlyMap<string, string>): string[] {
  return [...files.keys()].filter((path) => /[\da-f]{8}-[\da-f]{4}-/.test(path));
}
