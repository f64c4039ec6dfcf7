import { join } from 'node:path';
import { Command, Option } from 'commander';
import type { VFile } from 'vfile';
import { type AllChecks, allAgree, allChecks, summaryLine, summaryOf } from '../checks/all-checks.ts';
import { checksDocument } from '../checks/checks-page.ts';
import { flyersOf } from '../checks/flyers.ts';
import type { HandbooksBeside } from '../checks/handbooks-section.ts';
import { RequestError } from '../flight/terms/errors.ts';
import { checkHandbooks } from '../lesson/check-handbooks.ts';
import { hasErrors } from '../messages/failures.ts';
import { endingsInWords } from '../press/formats/list.ts';
import { ScenarioError } from '../press/packet/scenario.ts';
import { type PaperName, papers } from '../press/paper/paper.ts';
import { readHandbooks, readSchool } from '../school/read.ts';
import type { School } from '../school/school.ts';
import { requestSentence } from '../words/refusals/request-words.ts';
import { dayOption, today } from './options.ts';
import { exitCodes, printPages, report } from './print-pages.ts';
import { readLessons } from './read-lessons.ts';
import { version } from './version.ts';

interface ChecksOptions {
  school: string;
  paper?: PaperName;
  date?: Date;
  out: string;
  browser?: string;
}

/**
 * `chalkwing checks`: the computation core beside published figures, as one page. Exit code 1 where any of them
 * disagrees.
 */
export function checksCommand(): Command {
  return new Command('checks')
    .description(`Print the checks of the computation against published figures (${endingsInWords()})`)
    .option('--school <folder>', 'folder that holds school.yaml', 'lessons')
    .addOption(new Option('--paper <size>', "default: the school's").choices(Object.keys(papers)))
    .option('--date <day>', 'the day that the page bears, such as 2026-11-25; default: today', dayOption)
    .option('--out <folder>', 'where the page goes', 'dist')
    .option('--browser <path>', 'the browser that prints the PDF')
    .action(async (options: ChecksOptions) => {
      process.exitCode = await check(options);
    });
}

async function check(options: ChecksOptions): Promise<number> {
  const date = options.date ?? today();
  const { files, value: school } = await readSchool(options.school, date);
  const failed = report(files);
  if (!school) return Math.max(failed, exitCodes.mistakes);
  const checks = checksOf(school);
  if (typeof checks === 'string') {
    process.stderr.write(`${join(options.school, 'school.yaml')}: ${checks}\n`);
    return exitCodes.mistakes;
  }
  const paper = options.paper ?? school.paper;
  const { name, units } = school;
  const { file, beside } = await handbooksBeside(options.school);
  const unread = report(file);
  const page = { school: name, units, paper: papers[paper], date, version };
  const document = checksDocument({ checks, handbooks: beside, ...page });
  const printed = await printPages([{ path: 'checks', document }], options);
  const summary = summaryOf(checks);
  process.stdout.write(`${summaryLine(summary)}\n`);
  return allAgree(summary) ? Math.max(printed, unread) : exitCodes.mistakes;
}

/** The comparison with published handbooks, where the school has one without mistakes; its file has the messages. */
async function handbooksBeside(
  folder: string,
): Promise<{ file: VFile[]; beside: HandbooksBeside | undefined }> {
  const read = await readHandbooks(folder);
  if (!read) return { file: [], beside: undefined };
  const lessons = await readLessons(folder);
  if (read.value) checkHandbooks(read.value, new Map([...lessons].map(([id, { lesson }]) => [id, lesson])));
  const table = hasErrors(read.file) ? undefined : read.value?.value;
  const titles = new Map([...lessons].map(([id, { lesson }]) => [id, lesson.frontMatter?.title ?? id]));
  return { file: [read.file], beside: table && { table, titles } };
}

/** The checks, or why the school's aircraft cannot be flown. */
function checksOf(school: School): AllChecks | string {
  try {
    return allChecks(flyersOf(school));
  } catch (error) {
    if (error instanceof RequestError) return requestSentence(error, school.units);
    if (error instanceof ScenarioError) return error.message;
    throw error;
  }
}
