import { setTimeout } from 'node:timers/promises';
import { descendants, isAlive, nameOf, startedWith } from './processes.ts';

/** The variable that every process of a run finds in its environment, and hands on to those that it starts. */
const mark = 'CHALKWING_TEST_RUN';
/** ms that a process which was told to end has to do so. One that nobody has told never ends, so this decides nothing. */
const toEnd = 60_000;

/** Marks whatever this process starts from now on; gives the mark, which begins with that of the parent process. */
export function markOwn(): string {
  const own = `${process.pid}/`;
  const before = process.env[mark] ?? '';
  const marked = before.endsWith(own) ? before : before + own;
  process.env[mark] = marked;
  return marked;
}

/**
 * What this process, and in turn those it started, have started and is still running: by name. It waits for what is
 * about to end, and returns as soon as nothing is left.
 */
export async function leftBehind(patience = toEnd): Promise<string[]> {
  const marked = markOwn();
  const left = () =>
    [...new Set([...descendants(process.pid), ...startedWith(mark, marked)])].filter(
      (pid) => pid !== process.pid && isAlive(pid) && !isHelper(pid),
    );
  for (const since = Date.now(); left().length > 0 && Date.now() - since < patience; ) await setTimeout(20);
  return left().map(nameOf);
}

/** The bundler's own process ends with the one that uses it. */
const isHelper = (pid: number) => /esbuild\S* --service=/.test(nameOf(pid));
