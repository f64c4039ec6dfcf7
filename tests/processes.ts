import { readdirSync, readFileSync } from 'node:fs';

// What runs beside a test, looked up the Linux way; elsewhere nothing is found.

/** The processes that a process has started, and those that they have started, by their ids. */
export function descendants(pid: number): number[] {
  const children = processes().filter((each) => parentOf(each) === pid);
  return children.flatMap((child) => [child, ...descendants(child)]);
}

/** The processes that were started with a variable whose value begins like this, whoever is their parent by now. */
export function startedWith(name: string, value: string): number[] {
  const entry = `${name}=${value}`;
  return processes().filter((pid) =>
    read(pid, 'environ')
      ?.split('\0')
      .some((each) => each.startsWith(entry)),
  );
}

/** Whether a process is running, and is not only waiting for its parent to read how it ended. */
export function isAlive(pid: number): boolean {
  const status = read(pid, 'status');
  return status !== undefined && !/^State:\s*[ZX]/m.test(status);
}

/** A process as a person knows it: its id and what it was started with. */
export function nameOf(pid: number): string {
  return `${pid} ${read(pid, 'cmdline')?.replaceAll('\0', ' ').trim().slice(0, 200)}`;
}

function processes(): number[] {
  if (process.platform !== 'linux') return [];
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number);
}

function parentOf(pid: number): number | undefined {
  const found = /^PPid:\s*(\d+)/m.exec(read(pid, 'status') ?? '');
  return found ? Number(found[1]) : undefined;
}

/** Undefined for a process that has ended, or is another user's. */
function read(pid: number, file: 'status' | 'environ' | 'cmdline'): string | undefined {
  try {
    return readFileSync(`/proc/${pid}/${file}`, 'utf8');
  } catch {
    return undefined;
  }
}
