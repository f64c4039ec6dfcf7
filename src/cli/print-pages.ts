import { join, relative } from 'node:path';
import type { VFile } from 'vfile';
import { reporter } from 'vfile-reporter';
import { hasErrors } from '../messages/failures.ts';
import type { GradeTally } from '../press/packet/grade-tally.ts';
import type { WrongChoices } from '../press/packet/lesson-messages.ts';
import { type PageToPrint, type PrintEvent, printAll } from '../press/printing/print-all.ts';
import { leftWords } from '../press/printing/time-left.ts';

/** Exit codes of the commands that print pages; one stopped by a signal ends with the shell's code for it. */
export const exitCodes = { built: 0, mistakes: 1, notToBeFlown: 3, noBrowser: 4, notWritten: 5 };

/** 128 plus the number of the signal. */
const stopCodes = { SIGHUP: 129, SIGINT: 130, SIGTERM: 143 };

/** Whether a signal ended the command: then the exit code says that, whatever else is wrong. */
function isStopped(code: number): boolean {
  return Object.values(stopCodes).includes(code);
}

/** Where pages go, and what prints them. */
export interface PrintTo {
  readonly out: string;
  readonly browser?: string | undefined;
  /** How many at once. */
  readonly jobs?: number | undefined;
}

/**
 * Prints each page, writes it, and says what it does. Without a browser the formats that need none are written, and
 * the exit code says that something is missing. Ctrl-C ends it in good order; a second Ctrl-C ends it at once.
 */
export async function printPages(
  pages: readonly PageToPrint[],
  { out, browser, jobs }: PrintTo,
): Promise<number> {
  const stop = new AbortController();
  let stoppedBy: keyof typeof stopCodes | undefined;
  const onSignal = (signal: NodeJS.Signals) => {
    stoppedBy = signal as keyof typeof stopCodes;
    stop.abort();
  };
  for (const signal of Object.keys(stopCodes)) process.once(signal, onSignal);
  const progress = new Progress(process.stderr);
  try {
    const tell = (event: PrintEvent) => tellOf(event, out, progress);
    const done = await printAll(pages, { out, browser, jobs, signal: stop.signal, tell });
    progress.clear();
    if (stoppedBy) {
      process.stderr.write(
        `Stopped: ${done.printed} of ${pages.length} printed. Give the same command again to go on from here.\n`,
      );
      return stopCodes[stoppedBy];
    }
    if (done.noBrowser !== undefined) process.stderr.write(`${done.noBrowser}\n`);
    if (done.left > 0) process.stderr.write(`Not tried: ${done.left} of ${pages.length}.\n`);
    if (done.unwritten > 0) return exitCodes.notWritten;
    if (done.noBrowser !== undefined) return exitCodes.noBrowser;
    return done.unprintable > 0 ? exitCodes.mistakes : exitCodes.built;
  } finally {
    progress.clear();
    for (const signal of Object.keys(stopCodes)) process.off(signal, onSignal);
  }
}

function tellOf(event: PrintEvent, out: string, progress: Progress): void {
  const path = relative('.', join(out, event.path));
  if (event.kind === 'begun') {
    // Where there is only one page, its own line says it all.
    if (event.of === 1) return;
    const left = event.secondsLeft === undefined ? '' : `, ${leftWords(event.secondsLeft)}`;
    progress.show(`Printing ${event.number} of ${event.of}: ${event.path}${left}`);
    return;
  }
  progress.clear();
  switch (event.kind) {
    case 'printed':
      process.stdout.write(`${writtenWords(path, event.endings)}\n`);
      break;
    case 'unprintable':
      process.stderr.write(
        `${event.path} is not printed:\n${event.messages.map((line) => `  ${line}\n`).join('')}`,
      );
      break;
    case 'without-browser':
      for (const ending of event.old)
        process.stderr.write(`${path}.${ending} is of an earlier build: do not use it.\n`);
      break;
    case 'unwritten':
      process.stderr.write(`${event.message}.\n`);
  }
}

/** `power-off-180/osier-15.pdf (and .html, .txt)`. */
function writtenWords(path: string, [first, ...others]: readonly string[]): string {
  const also = others.map((ending) => `.${ending}`).join(', ');
  return also === '' ? `${path}.${first}` : `${path}.${first} (and ${also})`;
}

/** For a terminal that does not say how wide it is. */
const usualColumns = 80;

/** One line, rewritten in place on a terminal; elsewhere a new line each time. */
class Progress {
  readonly #stream: NodeJS.WriteStream;
  #shown = false;

  constructor(stream: NodeJS.WriteStream) {
    this.#stream = stream;
  }

  show(line: string): void {
    if (!this.#stream.isTTY) {
      this.#stream.write(`${line}\n`);
      return;
    }
    this.clear();
    // A line that ran over the edge could not be cleared.
    this.#stream.write(line.slice(0, (this.#stream.columns || usualColumns) - 1));
    this.#shown = true;
  }

  clear(): void {
    if (this.#shown) this.#stream.write('\r\u001b[2K');
    this.#shown = false;
  }
}

/** Prints the messages of the files that have any; the exit code says whether one of them is an error. */
export function report(files: readonly VFile[]): number {
  const spoken = files.filter((file) => file.messages.length > 0);
  if (spoken.length > 0) process.stderr.write(`${reporter(spoken)}\n`);
  return spoken.some(hasErrors) ? exitCodes.mistakes : exitCodes.built;
}

/** How a command that prints has ended. */
export interface Ended {
  /** Exit code of the printing. */
  readonly printed: number;
  /** With their messages. */
  readonly files: readonly VFile[];
  readonly choices: Readonly<WrongChoices>;
  readonly tally: GradeTally;
}

/**
 * Says how many plans have which grade, with `one` as the word for one of them, and gives the exit code: that of a
 * signal; else that of a mistake; else, where the only thing wrong is plans that are not to be flown, theirs; else
 * that of the printing.
 */
export function endWith({ printed, files, choices, tally }: Ended, one: string): number {
  const words = tally.words(one);
  if (words !== undefined) process.stderr.write(`${words}\n`);
  if (isStopped(printed)) return printed;
  const errors = files.flatMap(({ messages }) => messages.filter(({ fatal }) => fatal));
  const rules = [...errors.map(({ ruleId }) => ruleId), ...choices.values()];
  if (rules.some((rule) => rule !== 'not-to-be-flown')) return exitCodes.mistakes;
  return rules.length > 0 ? exitCodes.notToBeFlown : printed;
}
