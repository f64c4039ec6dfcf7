import { join } from 'node:path';
import { Command, Option } from 'commander';
import { VFile } from 'vfile';
import type { Edition } from '../../components/context.ts';
import type { Power } from '../flight/aircraft.ts';
import type { Circuit } from '../flight/airfield.ts';
import { buildLesson } from '../press/build.ts';
import { type PaperName, papers } from '../press/paper.ts';
import { didYouMean } from '../school/nearest-name.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import type { Wind } from '../units/wind-text.ts';
import { askedBy, dayOption, quantityOption, today, windOption } from './options.ts';
import { exitCodes, printPages, report } from './print-pages.ts';
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
  edition: Edition | 'both';
  paper?: PaperName;
  date?: Date;
  out: string;
  browser?: string;
}

type BuildAll = Omit<BuildOptions, keyof Weather> & Weather & { readonly date: Date };

const editions: readonly Edition[] = ['student', 'instructor'];

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
    .addOption(
      new Option('--edition <whose>', "the student's, the instructor's with notes and answers, or both")
        .choices([...editions, 'both'])
        .default('student'),
    )
    .addOption(new Option('--paper <size>', "default: the school's").choices(Object.keys(papers)))
    .option('--date <day>', 'the day that the packets bear, such as 2026-11-25; default: today', dayOption)
    .option('--out <folder>', 'where the packets go', join('dist', 'packets'))
    .option('--browser <path>', 'the browser that prints the PDF')
    .action(async (lessons: string[], options: BuildOptions) => {
      process.exitCode = await build(lessons, options);
    });
}

async function build(names: readonly string[], options: BuildOptions): Promise<number> {
  const weather = weatherOf(options);
  const date = options.date ?? today();
  const { files, withSoundAircraft: school } = await readSchool(options.school, date);
  if (!school || !weather) return Math.max(report(files), weather ? exitCodes.built : exitCodes.mistakes);
  const asked = askedBy(options, weather);
  const { built, missing } = await buildAll(school, names, { ...options, ...weather, date }, asked);
  const packets = built.flatMap((lesson) => lesson.packets);
  const printed = packets.length > 0 ? await printPages(packets, options) : exitCodes.built;
  const failed = report([...files, ...built.map(({ file }) => file), ...missing]);
  const wrongChoices = new Set(built.flatMap((lesson) => lesson.wrongChoices));
  for (const message of wrongChoices) process.stderr.write(`${message}\n`);
  for (const id of school.aircraftIds.filter((each) => !school.fleet.has(each)))
    process.stderr.write(`No packet is built for \`${id}\`: its file has a mistake.\n`);
  return failed === exitCodes.built && wrongChoices.size > 0 ? exitCodes.mistakes : failed || printed;
}

async function buildAll(
  school: School,
  asked: readonly string[],
  options: BuildAll,
  askedFor: Readonly<Record<string, string>>,
) {
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
        asked: askedFor,
        editions: editions.filter((edition) => options.edition === 'both' || options.edition === edition),
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
