import { join } from 'node:path';
import { Command, Option } from 'commander';
import { VFile } from 'vfile';
import type { Edition } from '../../components/context.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import { endingsInWords } from '../press/formats/list.ts';
import { type OpenLesson, openLesson, type Variant } from '../press/packet/build.ts';
import { GradeTally } from '../press/packet/grade-tally.ts';
import { removeRepeats } from '../press/packet/lesson-messages.ts';
import { type PaperName, papers } from '../press/paper/paper.ts';
import { airfieldTexts } from '../press/printing/airfield-texts.ts';
import { codeMark } from '../press/printing/code-mark.ts';
import { inShard, type Shard } from '../press/printing/shard.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import {
  askedBy,
  dayOption,
  jobsOption,
  type NamedWind,
  papersOption,
  shardOption,
  today,
  usualJobs,
  windsOption,
} from './options.ts';
import { printOrders } from './print-orders.ts';
import { endWith, exitCodes, report } from './print-pages.ts';
import { type PrintedSetting, withSettingOptions } from './setting-options.ts';
import { version } from './version.ts';
import { weatherOf } from './weather.ts';

interface BuildOptions extends PrintedSetting {
  aircraft?: string[];
  wind?: NamedWind[];
  edition: Edition | 'both';
  paper?: PaperName[];
  date?: Date;
  out: string;
  jobs: number;
  shard?: Shard;
  again?: boolean;
  browser?: string;
}

const pathsHelp = `
Files: OUT/LESSON/AIRCRAFT and the instructor's OUT/LESSON/AIRCRAFT.instructor, each with ${endingsInWords()}.
With several winds each has a folder of its own before the lesson's (OUT/wind-210-12kt/LESSON/...), and with several papers each paper
(OUT/A4/LESSON/...); with both, the wind comes first.

A packet is printed again where something in it changed: its lesson, aircraft, airfield, wind, paper, this program, the
browser; or where its files are not as they were printed. What was printed from what is kept in OUT/.printed.

Exit code 3: a plan is not to be flown, and has no packet; a lesson that shows such a plan says so with
\`shows: not-to-be-flown\`. 1: another mistake. 4: no browser. 5: something cannot be written.`;

const editions: readonly Edition[] = ['student', 'instructor'];

/**
 * `chalkwing build`: lessons to packets, in every format. A lesson with a mistake, or a plan that is not to be flown,
 * leaves its earlier packets as they are.
 */
export function buildCommand(): Command {
  return withSettingOptions(new Command('build'), "the lesson's, else the school's")
    .description(`Print lessons as packets (${endingsInWords()}), one for each aircraft`)
    .argument('[lessons...]', 'names of lessons, without `.md`; default: the chapters of the handbook')
    .option('--aircraft <ids...>', "default: the lesson's, else the handbook's")
    .option(
      '--wind <wind>',
      "such as 210/12kt; again for another wind; default: the lesson's, else the school's",
      windsOption,
    )
    .addOption(
      new Option('--edition <whose>', "the student's, the instructor's with notes and answers, or both")
        .choices([...editions, 'both'])
        .default('student'),
    )
    .option(
      '--paper <size>',
      `${Object.keys(papers).join(', ')} or both; again for another; default: the school's`,
      papersOption,
    )
    .option(
      '--date <day>',
      'the day that the packets bear, such as 2026-11-25; default: today for those that are printed, while one that has not changed keeps its day',
      dayOption,
    )
    .option('--out <folder>', 'where the packets go', join('dist', 'packets'))
    .option('--jobs <number>', 'how many to print at once', jobsOption, usualJobs)
    .option('--shard <part>', 'only a part of the packets: 2/4 is the second of four', shardOption)
    .option('--again', 'print also what has not changed since it was printed')
    .option('--browser <path>', 'the browser that prints the PDF')
    .addHelpText('after', pathsHelp)
    .action(async (lessons: string[], options: BuildOptions) => {
      process.exitCode = await build(lessons, options);
    });
}

async function build(asked: readonly string[], options: BuildOptions): Promise<number> {
  const variants = variantsOf(options);
  const date = options.date ?? today();
  const { files, withSoundAircraft: school } = await readSchool(options.school, date);
  if (!school || !variants) return Math.max(report(files), variants ? exitCodes.built : exitCodes.mistakes);
  const names = lessonNames(school, asked);
  const missing = names
    .filter((name) => !school.lessonIds.includes(name))
    .map((name) => noLesson(school, name));
  const common = { code: codeMark(), version, airfields: airfieldTexts(files, school) };
  const lessons: OpenLesson[] = [];
  const tally = new GradeTally();
  for (const lesson of names.filter((name) => school.lessonIds.includes(name))) {
    lessons.push(
      await openLesson({
        school,
        lesson,
        aircraft: options.aircraft ?? [],
        variants,
        editions: editions.filter((edition) => options.edition === 'both' || options.edition === edition),
        papers: options.paper ?? [school.paper],
        date,
        version,
        common,
        tally,
      }),
    );
  }
  const orders = inShard(
    lessons.flatMap((lesson) => lesson.orders),
    options.shard ?? { index: 1, count: 1 },
  );
  const printed = await printOrders(orders, 'packet', school.folder, options);
  for (const { file } of lessons) removeRepeats(file);
  const all = [...files, ...lessons.map(({ file }) => file), ...missing];
  report(all);
  const choices = new Map(lessons.flatMap((lesson) => [...lesson.wrongChoices]));
  for (const message of choices.keys()) process.stderr.write(`${message}\n`);
  for (const id of school.aircraftIds.filter((each) => !school.fleet.has(each)))
    process.stderr.write(`No packet is built for \`${id}\`: its file has a mistake.\n`);
  return endWith({ printed, files: all, choices, tally }, 'packet');
}

/** One for each wind asked for; undefined, with a message, where the METAR is unreadable. */
function variantsOf(options: BuildOptions): Variant[] | undefined {
  const winds = options.wind ?? [undefined];
  const variants: Variant[] = [];
  for (const each of winds) {
    const weather = weatherOf({ ...options, wind: each?.wind });
    if (!weather) return undefined;
    const asked = askedBy({ ...options, wind: each?.wind }, weather);
    if (each && winds.length > 1) asked.wind = `--wind ${each.text}`;
    const { airfield, runway, circuit, power } = options;
    const choices = { airfield, runway, circuit, power, ...weather };
    variants.push({ choices, asked, folder: each && winds.length > 1 ? each.folder : '' });
  }
  return variants;
}

function lessonNames(school: School, asked: readonly string[]): string[] {
  const chapters = school.handbook?.chapters ?? [];
  return [...new Set(asked.length > 0 ? asked : chapters.length > 0 ? chapters : school.lessonIds)];
}

function noLesson(school: School, name: string): VFile {
  const file = new VFile({ path: join(school.folder, `${name}.md`) });
  const there = school.lessonIds.map((id) => `\`${id}\``).join(', ') || 'none';
  file.message(
    `There is no such lesson${didYouMean(name, school.lessonIds)} (lessons here: ${there})`,
  ).fatal = true;
  return file;
}
