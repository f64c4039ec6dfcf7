import { join } from 'node:path';
import { Command } from 'commander';
import { VFile } from 'vfile';
import { checkHandbooks } from '../lesson/check-handbooks.ts';
import { checkNeeds } from '../lesson/check-needs.ts';
import { checkPlanParts } from '../lesson/check-plan-parts.ts';
import { fail, hasErrors } from '../messages/failures.ts';
import { didYouMean } from '../messages/nearest-name.ts';
import { checkFlights } from '../press/packet/check-flights.ts';
import { checkSteep } from '../press/packet/check-steep.ts';
import { GradeTally } from '../press/packet/grade-tally.ts';
import { readHandbooks, readSchool } from '../school/read.ts';
import { messageReport } from './message-report.ts';
import { readLessons } from './read-lessons.ts';

/** Exit codes of `chalkwing check`. Warnings do not change them. */
const exitCodes = { sound: 0, mistakes: 1 };

/** `chalkwing check`: every message of a school at once, each with its line; writes nothing. */
export function checkCommand(): Command {
  return new Command('check')
    .description('Check a school and its lessons, and show every mistake in its place')
    .argument('[lessons...]', 'names of lessons, without `.md`; default: all of the school')
    .option('--school <folder>', 'folder that holds school.yaml', 'lessons')
    .action(async (lessons: string[], options: { school: string }) => {
      const tally = new GradeTally();
      const files = await check(options.school, lessons, tally);
      process.stdout.write(messageReport(files));
      const words = tally.words('plan', 'no packet is made');
      if (words !== undefined) process.stdout.write(`${words}\n`);
      process.exitCode = files.some(hasErrors) ? exitCodes.mistakes : exitCodes.sound;
    });
}

/**
 * The files of a school with all their messages: its YAML, and the lessons asked for (all of them where none is).
 * Where the YAML has an error, the lessons are read but not flown. The plans are counted by their grades.
 */
export async function check(
  folder: string,
  asked: readonly string[],
  tally = new GradeTally(),
): Promise<VFile[]> {
  const { files, value: school } = await readSchool(folder);
  const all = await readLessons(folder);
  checkNeeds(
    new Map(
      [...all].map(([id, { lesson }]) => [
        id,
        { needs: lesson.frontMatter?.needs ?? [], source: lesson.frontMatterSource },
      ]),
    ),
  );
  school?.fleet.forEach((aircraft, id) => {
    const file = files.find(({ path }) => path === join(folder, 'fleet', `${id}.yaml`));
    if (file) checkSteep(file, aircraft);
  });
  const handbooks = await readHandbooks(folder);
  if (handbooks?.value) {
    checkHandbooks(handbooks.value, new Map([...all].map(([id, { lesson }]) => [id, lesson])));
  }
  const names = asked.length > 0 ? [...new Set(asked)] : [...all.keys()];
  const lessons: VFile[] = [];
  for (const name of names) {
    const read = all.get(name);
    if (!read) {
      lessons.push(noLesson(folder, name, [...all.keys()]));
      continue;
    }
    const { file, lesson } = read;
    if (lesson.frontMatter) checkPlanParts(lesson, file);
    if (school) checkFlights(lesson, file, school, tally);
    lessons.push(file);
  }
  return [...files, ...(handbooks ? [handbooks.file] : []), ...lessons];
}

function noLesson(folder: string, name: string, known: readonly string[]): VFile {
  const file = new VFile({ path: join(folder, `${name}.md`) });
  const there = known.map((id) => `\`${id}\``).join(', ') || 'none';
  fail(file, `There is no such lesson${didYouMean(name, known)} (lessons here: ${there})`, 'missing-file');
  return file;
}
