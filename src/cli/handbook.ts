import { join } from 'node:path';
import { Command, Option } from 'commander';
import type { Edition } from '../../components/context.ts';
import { NoBrowserError } from '../press/find-browser.ts';
import { withPages } from '../press/handbook/first-print.ts';
import { makeHandbook } from '../press/handbook/make-handbook.ts';
import { type PaperName, papers } from '../press/paper.ts';
import { UnprintableError } from '../press/print-pdf.ts';
import { didYouMean } from '../school/nearest-name.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import type { Wind } from '../units/wind-text.ts';
import { askedBy, dayOption, today, windOption } from './options.ts';
import { exitCodes, printPages, report } from './print-pages.ts';
import { type PrintedSetting, withSettingOptions } from './setting-options.ts';
import { version } from './version.ts';
import { weatherOf } from './weather.ts';

interface HandbookOptions extends PrintedSetting {
  aircraft?: string[];
  fleet?: boolean;
  wind?: Wind;
  edition: Edition | 'both';
  paper?: PaperName;
  date?: Date;
  out: string;
  browser?: string;
}

const editions: readonly Edition[] = ['student', 'instructor'];

/** `chalkwing handbook`: the school's lessons bound into one book, with contents, glossary and index. */
export function handbookCommand(): Command {
  return withSettingOptions(new Command('handbook'), "the lesson's, else the school's")
    .description("Bind the school's lessons into a book, one for each aircraft")
    .option('--aircraft <ids...>', "default: the handbook's, in school.yaml")
    .option('--fleet', 'one volume for all of these aircraft, in place of one for each')
    .option('--wind <wind>', "such as 210/12kt; default: the lesson's, else the school's", windOption)
    .addOption(
      new Option('--edition <whose>', "the student's, the instructor's with notes and answers, or both")
        .choices([...editions, 'both'])
        .default('student'),
    )
    .addOption(new Option('--paper <size>', "default: the school's").choices(Object.keys(papers)))
    .option('--date <day>', 'the day that the book bears, such as 2026-11-25; default: today', dayOption)
    .option('--out <folder>', 'where the book goes', join('dist', 'handbook'))
    .option('--browser <path>', 'the browser that prints the PDF')
    .action(async (options: HandbookOptions) => {
      process.exitCode = await handbook(options);
    });
}

async function handbook(options: HandbookOptions): Promise<number> {
  const weather = weatherOf(options);
  const date = options.date ?? today();
  const { files, withSoundAircraft: school } = await readSchool(options.school, date);
  if (!school || !weather) return Math.max(report(files), weather ? exitCodes.built : exitCodes.mistakes);
  const lacking = whatIsLacking(school, options);
  if (lacking !== undefined) {
    report(files);
    process.stderr.write(`${lacking}\n`);
    return exitCodes.mistakes;
  }
  const ids = options.aircraft ?? school.handbook!.aircraft;
  const volumes = options.fleet
    ? [{ name: 'fleet', aircraft: ids }]
    : ids.map((id) => ({ name: id, aircraft: [id] }));
  const paper = options.paper ?? school.paper;
  const books = [];
  const spoken = new Set(files);
  const wrong = new Set<string>();
  for (const { name, aircraft } of volumes) {
    for (const edition of editions.filter((each) => options.edition === 'both' || options.edition === each)) {
      const made = await makeHandbook({
        school,
        title: school.handbook!.title,
        lessons: school.handbook!.chapters,
        aircraft,
        choices: { ...options, ...weather },
        asked: askedBy(options, weather),
        edition,
        paper,
        date,
        version,
      });
      for (const file of made.files) spoken.add(file);
      for (const message of made.wrongChoices) wrong.add(message);
      const path = edition === 'student' ? name : `${name}.${edition}`;
      if (made.html) books.push({ path, html: made.html, paper, date });
      else
        process.stderr.write(`The book \`${path}\` is not printed: a book with a chapter missing is none.\n`);
    }
  }
  const mistakes = report([...spoken]);
  for (const message of wrong) process.stderr.write(`${message}\n`);
  const printed = books.length > 0 ? await print(books, options) : exitCodes.built;
  return wrong.size > 0 ? exitCodes.mistakes : mistakes || printed;
}

/** Twice: the first print says on which page everything stands. */
async function print(
  books: readonly {
    path: string;
    html: Parameters<typeof withPages>[0][0]['html'];
    paper: PaperName;
    date: Date;
  }[],
  options: HandbookOptions,
): Promise<number> {
  const unpaged = books.map(({ html, paper, date }) => ({ html, paper: papers[paper], date }));
  try {
    const paged = await withPages(unpaged, options.browser);
    return await printPages(
      books.map(({ path, paper, date }, at) => ({ path, paper, date, html: paged[at]! })),
      options,
    );
  } catch (error) {
    if (error instanceof NoBrowserError) {
      process.stderr.write(`${error.message}\n`);
      return exitCodes.noBrowser;
    }
    if (!(error instanceof UnprintableError)) throw error;
    process.stderr.write(`The book is not printed:\n${error.messages.map((line) => `  ${line}\n`).join('')}`);
    return exitCodes.mistakes;
  }
}

/** What the school has to write, or the command to ask for, before there is a book. */
function whatIsLacking(school: School, { aircraft, school: folder }: HandbookOptions): string | undefined {
  const { handbook } = school;
  if (!handbook || handbook.chapters.length === 0)
    return `${join(folder, 'school.yaml')} names no chapters: write \`handbook: { title: …, chapters: [${school.lessonIds.slice(0, 2).join(', ')}], aircraft: [${school.defaults.aircraft}] }\``;
  const ids = aircraft ?? handbook.aircraft;
  if (ids.length === 0)
    return `Name the aircraft of the book: \`--aircraft ${school.defaults.aircraft}\`, or \`aircraft: [${school.defaults.aircraft}]\` under \`handbook\` in ${join(folder, 'school.yaml')}`;
  const known = [...school.fleet.keys()];
  const strange = ids.filter((id) => !school.fleet.has(id));
  const words = strange.map((id) =>
    school.aircraftIds.includes(id)
      ? `\`fleet/${id}.yaml\` has a mistake: no book is printed for it.`
      : `The school has no aircraft \`${id}\`${didYouMean(id, known)} (it has ${known.map((each) => `\`${each}\``).join(', ')})`,
  );
  return words.length > 0 ? words.join('\n') : undefined;
}
