import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { Command, InvalidArgumentError } from 'commander';
import { openDesk } from '../desk/server/open-desk.ts';
import { Refusal } from '../desk/server/refusal.ts';
import { today } from './options.ts';
import { version } from './version.ts';

/** Exit codes of `chalkwing desk`; Ctrl-C is how it ends. */
const exitCodes = { closed: 0, notOpened: 1 };

interface DeskOptions {
  school: string;
  port: number;
  open?: boolean;
  out: string;
  browser?: string;
}

/** `chalkwing desk`: a page on this machine to write lessons in, with the packet beside it as it will print. */
export function deskCommand(): Command {
  return new Command('desk')
    .description('Write lessons in the browser, with the packet beside as it will print')
    .option('--school <folder>', 'folder that holds school.yaml', 'lessons')
    .option('--port <number>', 'port of this machine; 0: one that is free', portOption, 0)
    .option('--open', 'open it in the browser of this machine')
    .option('--out <folder>', 'where printed packets go', join('dist', 'packets'))
    .option('--browser <path>', 'the browser that prints the PDF')
    .action(async (options: DeskOptions) => {
      process.exitCode = await desk(options);
    });
}

async function desk({ school, port, open, out, browser }: DeskOptions): Promise<number> {
  const opened = await openDesk({
    folder: school,
    out,
    browser,
    port,
    version,
    today,
    log: (text) => void process.stderr.write(text),
  }).catch((error: NodeJS.ErrnoException) => whyNot(error, port));
  if (typeof opened === 'string') {
    process.stderr.write(`${opened}\n`);
    return exitCodes.notOpened;
  }
  process.stdout.write(`${opened.address}\nOpen it in a browser of this machine. Ctrl-C closes the desk.\n`);
  if (open) openBrowser(opened.address);
  await stopped();
  await opened.close();
  return exitCodes.closed;
}

function whyNot(error: NodeJS.ErrnoException, port: number): string {
  if (error instanceof Refusal) return `${error.message} Name the folder with --school.`;
  if (error.code === 'EADDRINUSE') return `Port ${port} is taken: name another one, or leave --port out.`;
  if (error.code === 'EACCES')
    return `Port ${port} may not be opened: name one above 1023, or leave --port out.`;
  throw error;
}

/** Resolves at the first signal; a second one ends the program at once. */
function stopped(): Promise<void> {
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  return new Promise((resolve) => {
    const stop = () => {
      for (const signal of signals) process.off(signal, stop);
      resolve();
    };
    for (const signal of signals) process.once(signal, stop);
  });
}

/** Where no browser opens, the address is in the terminal. */
function openBrowser(address: string): void {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['rundll32', 'url.dll,FileProtocolHandler']
        : ['xdg-open'];
  const child = spawn(command!, [...args, address], { stdio: 'ignore', detached: true });
  child.on('error', () => process.stderr.write('No browser opens by itself: open the address above.\n'));
  child.unref();
}

function portOption(text: string): number {
  const port = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (!(port <= 65_535)) throw new InvalidArgumentError('write a number from 0 to 65535, such as `4000`');
  return port;
}
