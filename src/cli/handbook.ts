import { join } from 'node:path';
import { Command, Option } from 'commander';
import type { Edition } from '../../components/context.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import { bookOrder, openBook } from '../press/book/book-order.ts';
import type { Volume } from '../press/book/volume.ts';
import { GradeTally } from '../press/packet/grade-tally.ts';
import { removeRepeats } from '../press/packet/lesson-messages.ts';
import { type PaperName, papers } from '../press/paper/paper.ts';
import { airfieldTexts } from '../press/printing/airfield-texts.ts';
import { codeMark } from '../press/printing/code-mark.ts';
import { readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import type { Wind } from '../units/wind-text.ts';
import { askedBy, dayOption, today, windOption } from './options.ts';
import { printOrders } from './print-orders.ts';
import { endWith, exitCodes, report } from './print-pages.ts';
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
  again?: boolean;
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
    .option(
      '--date <day>',
      'the day that the book bears, such as 2026-11-25; default: today, while one that has not changed keeps its day',
      dayOption,
    )
    .option('--out <folder>', 'where the book goes', join('dist', 'handbook'))
    .option('--again', 'print also what has not changed since it was printed')
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
  const { title, chapters, aircraft } = school.handbook!;
  const tally = new GradeTally();
  const book = await openBook(
    {
      ...{ school, title, date, version },
      choices: { ...options, ...weather },
      asked: askedBy(options, weather),
      common: { code: codeMark(), version, airfields: airfieldTexts(files, school) },
      tally,
    },
    chapters,
  );
  const refused: string[] = [];
  const orders = volumesOf(options, options.aircraft ?? aircraft).map((volume) =>
    bookOrder(book, {
      ...volume,
      paper: options.paper ?? school.paper,
      refused: () => refused.push(volume.path),
    }),
  );
  const printed = await printOrders(orders, 'book', school.folder, options);
  book.files.forEach(removeRepeats);
  report([...files, ...book.files]);
  for (const message of book.wrongChoices.keys()) process.stderr.write(`${message}\n`);
  for (const path of refused)
    process.stderr.write(`The book \`${path}\` is not printed: a book with a chapter missing is none.\n`);
  return endWith({ printed, files: [...files, ...book.files], choices: book.wrongChoices, tally }, 'chapter');
}

function volumesOf(
  { fleet, edition }: HandbookOptions,
  ids: readonly string[],
): Pick<Volume, 'path' | 'aircraft' | 'edition'>[] {
  const volumes = fleet
    ? [{ name: 'fleet', aircraft: ids }]
    : ids.map((id) => ({ name: id, aircraft: [id] }));
  return volumes.flatMap(({ name, aircraft }) =>
    editions
      .filter((each) => edition === 'both' || edition === each)
      .map((each) => ({ path: each === 'student' ? name : `${name}.${each}`, aircraft, edition: each })),
  );
}

/** What the school has to write first, or the command to be given, before there can be a book. */
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
