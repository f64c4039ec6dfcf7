import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { VFile } from 'vfile';
import { reporter } from 'vfile-reporter';
import type { Packet } from '../press/build.ts';
import { findBrowser, NoBrowserError } from '../press/find-browser.ts';
import { papers } from '../press/paper.ts';
import { type Printer, UnprintableError, withPrinter } from '../press/print-pdf.ts';
import { writeWhole } from '../press/write-whole.ts';
import { hasErrors } from '../school/yaml-source.ts';

/** Exit codes of the commands that print pages. */
export const exitCodes = { built: 0, mistakes: 1, noBrowser: 4 };

/** Where pages go, and what prints them. */
export interface PrintTo {
  readonly out: string;
  readonly browser?: string | undefined;
}

/** Prints each page and writes it. Without a browser the HTML stands, and the exit code says that the PDF is missing. */
export async function printPages(
  pages: readonly Packet[],
  { out, browser: named }: PrintTo,
): Promise<number> {
  try {
    const browser = await findBrowser({ named });
    return await withPrinter(browser, async (printer) => {
      let code = exitCodes.built;
      for (const page of pages) code = Math.max(code, await printOne(printer, page, out));
      return code;
    });
  } catch (error) {
    if (!(error instanceof NoBrowserError)) throw error;
    for (const page of pages) await writeUnprinted(page, out);
    process.stderr.write(`${error.message}\n`);
    return exitCodes.noBrowser;
  }
}

/** The HTML alone. A PDF of an earlier build beside it may say other figures, and is named. */
async function writeUnprinted(page: Packet, out: string): Promise<void> {
  const path = join(out, page.path);
  await writeWhole(`${path}.html`, page.html);
  if (existsSync(`${path}.pdf`))
    process.stderr.write(`${relative('.', path)}.pdf is of an earlier build: do not use it.\n`);
}

/** Nothing is written before the PDF is made: a page that cannot be printed leaves both earlier files. */
async function printOne(printer: Printer, page: Packet, out: string): Promise<number> {
  const path = join(out, page.path);
  try {
    const pdf = await printer.print(page.html, { paper: papers[page.paper], date: page.date });
    await writeWhole(`${path}.html`, page.html);
    await writeWhole(`${path}.pdf`, pdf);
    process.stdout.write(`${relative('.', path)}.pdf (and .html)\n`);
    return exitCodes.built;
  } catch (error) {
    if (!(error instanceof UnprintableError)) throw error;
    process.stderr.write(
      `${page.path} is not printed:\n${error.messages.map((line) => `  ${line}\n`).join('')}`,
    );
    return exitCodes.mistakes;
  }
}

/** Prints the messages of the files that have any; the exit code says whether one of them is an error. */
export function report(files: readonly VFile[]): number {
  const spoken = files.filter((file) => file.messages.length > 0);
  if (spoken.length > 0) process.stderr.write(`${reporter(spoken)}\n`);
  return spoken.some(hasErrors) ? exitCodes.mistakes : exitCodes.built;
}
