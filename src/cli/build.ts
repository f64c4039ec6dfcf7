import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { Command, Option } from 'commander';
import { VFile } from 'vfile';
import { reporter } from 'vfile-reporter';
import type { Power } from '../flight/aircraft.ts';
import type { Circuit } from '../flight/airfield.ts';

import { buildLesson, type Packet } from '../press/build.ts';
import { findBrowser, NoBrowserError } from '../press/find-browser.ts';
import { type PaperName, papers } from '../press/paper.ts';
import { type Printer, UnprintableError, withPrinter } from '../press/print-pdf.ts';
import { writeWhole } from '../press/write-whole.ts';
import { didYouMean } from '../school/nearest-name.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import { hasErrors } from '../school/yaml-source.ts';
import type { Wind } from '../units/wind-text.ts';
import { dayOption, quantityOption, today, windOption } from './options.ts';
import { version } from './version.ts';
import { metarHelp, type Weather, weatherOf } from './weather.ts';

interface BuildOptions {
  school: string;
  aircraft?: string[];
  airfield?: string;
  runway?: string;
  circuit?: Circuit;
  metar?: string;
  wind?: Wind;
  gust?: number;
  temperature?: number;
  qnh?: number;
  power?: Power;
  paper?: PaperName;
  date?: Date;
  out: string;
  browser?: string;
}

type BuildAll = Omit<BuildOptions, keyof Weather> & Weather & { readonly date: Date };

/** Exit codes of `chalkwing build`. */
const exitCodes = { built: 0, mistakes: 1, noBrowser: 4 };

/** `chalkwing build`: lessons to packets, HTML and PDF. A lesson with a mistake leaves its earlier packets alone. */
export function buildCommand(): Command {
  return new Command('build')
    .description('Print lessons as packets (HTML and PDF), one for each aircraft')
    .argument('[lessons...]', 'names of lessons, without `.md`; default: the chapters of the handbook')
    .option('--school <folder>', 'folder that holds school.yaml', 'lessons')
    .option('--aircraft <ids...>', "default: the lesson's, else the handbook's")
    .option('--airfield <id>', "default: the lesson's, else the school's")
    .option('--runway <name>', "default: the lesson's, else the school's")
    .addOption(new Option('--circuit <side>', "default: the runway's").choices(['left', 'right']))
    .option('--metar <report>', metarHelp)
    .option('--wind <wind>', "such as 210/12kt; default: the lesson's, else the school's", windOption)
    .option('--gust <speed>', "highest gust, such as 18kt; default: the school's", quantityOption('speed'))
    .option(
      '--temperature <temperature>',
      "at the field, such as 25C; default: the lesson's, else the school's",
      quantityOption('temperature'),
    )
    .option(
      '--qnh <pressure>',
      "such as 1008hPa; default: the lesson's, else the school's",
      quantityOption('pressure'),
    )
    .addOption(new Option('--power <setting>', 'engine').choices(['idle', 'stopped']))
    .addOption(new Option('--paper <size>', "default: the school's").choices(Object.keys(papers)))
    .option('--date <day>', 'the day that the packets bear, such as 2026-11-25; default: today', dayOption)
    .option('--out <folder>', 'where the packets go', join('dist', 'packets'))
    .option('--browser <path>', 'the browser that prints the PDF')
    .action(async (lessons: string[], options: BuildOptions) => {
      process.exitCode = await build(lessons, options);
    });
}

async function build(asked: readonly string[], options: BuildOptions): Promise<number> {
  const weather = weatherOf(options);
  const date = options.date ?? today();
  const { files, value: school } = await readSchool(options.school, date);
  if (!school || !weather) return Math.max(report(files), weather ? exitCodes.built : exitCodes.mistakes);
  const { built, missing } = await buildAll(school, asked, { ...options, ...weather, date });
  const messages = [...files, ...built.map(({ file }) => file), ...missing];
  const packets = built.flatMap((lesson) => lesson.packets);
  const printed = packets.length > 0 ? await printAll(packets, options) : exitCodes.built;
  const failed = report(messages);
  return failed === exitCodes.built ? printed : failed;
}

async function buildAll(school: School, asked: readonly string[], options: BuildAll) {
  const chapters = school.handbook?.chapters ?? [];
  const names = asked.length > 0 ? asked : chapters.length > 0 ? chapters : school.lessonIds;
  const known = names.filter((name) => school.lessonIds.includes(name));
  const built = [];
  for (const lesson of known) {
    built.push(
      await buildLesson({
        school,
        lesson,
        aircraft: options.aircraft ?? [],
        choices: options,
        paper: options.paper ?? school.paper,
        date: options.date,
        version,
      }),
    );
  }
  const missing = names.filter((name) => !known.includes(name)).map((name) => noLesson(school, name));
  return { built, missing };
}

function noLesson(school: School, name: string): VFile {
  const file = new VFile({ path: join(school.folder, `${name}.md`) });
  const there = school.lessonIds.map((id) => `\`${id}\``).join(', ') || 'none';
  file.message(
    `There is no such lesson${didYouMean(name, school.lessonIds)} (lessons here: ${there})`,
  ).fatal = true;
  return file;
}

/** Prints each packet and writes it. Without a browser the HTML stands, and the exit code says that the PDF is missing. */
async function printAll(packets: readonly Packet[], options: BuildOptions): Promise<number> {
  try {
    const browser = await findBrowser({ named: options.browser });
    return await withPrinter(browser, async (printer) => {
      let code = exitCodes.built;
      for (const packet of packets) code = Math.max(code, await printOne(printer, packet, options.out));
      return code;
    });
  } catch (error) {
    if (!(error instanceof NoBrowserError)) throw error;
    for (const packet of packets) await writeUnprinted(packet, options.out);
    process.stderr.write(`${error.message}\n`);
    return exitCodes.noBrowser;
  }
}

/** The HTML alone. A PDF of an earlier build beside it may say other figures, and is named. */
async function writeUnprinted(packet: Packet, out: string): Promise<void> {
  const path = join(out, packet.path);
  await writeWhole(`${path}.html`, packet.html);
  if (existsSync(`${path}.pdf`))
    process.stderr.write(`${relative('.', path)}.pdf is of an earlier build: do not use it.\n`);
}

/** Nothing is written before the PDF is made: a packet that cannot be printed leaves both earlier files. */
async function printOne(printer: Printer, packet: Packet, out: string): Promise<number> {
  const path = join(out, packet.path);
  try {
    const pdf = await printer.print(packet.html, { paper: papers[packet.paper], date: packet.date });
    await writeWhole(`${path}.html`, packet.html);
    await writeWhole(`${path}.pdf`, pdf);
    process.stdout.write(`${relative('.', path)}.pdf (and .html)\n`);
    return exitCodes.built;
  } catch (error) {
    if (!(error instanceof UnprintableError)) throw error;
    process.stderr.write(
      `${packet.path} is not printed:\n${error.messages.map((line) => `  ${line}\n`).join('')}`,
    );
    return exitCodes.mistakes;
  }
}

/** Prints the messages of the files that have any; the exit code says whether one of them is an error. */
function report(files: readonly VFile[]): number {
  const spoken = files.filter((file) => file.messages.length > 0);
  if (spoken.length > 0) process.stderr.write(`${reporter(spoken)}\n`);
  return spoken.some(hasErrors) ? exitCodes.mistakes : exitCodes.built;
}
