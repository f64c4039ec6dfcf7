import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ElementContent } from 'hast';
import { VFile } from 'vfile';
import type { Edition, PacketContext } from '../../../components/context.ts';
import { gradeStandards } from '../../../components/debrief/grade-standards.ts';
import { components } from '../../../components/list.ts';
import { type Lesson, parseLesson } from '../../lesson/parse-lesson.ts';
import { renderLesson } from '../../lesson/render-lesson.ts';
import type { School } from '../../school/school.ts';
import { hasErrors } from '../../school/yaml-source.ts';
import { removeRepeats, reportScenario } from '../build.ts';
import { fingerprint } from '../fingerprint.ts';
import { picturesIn } from '../lesson-pictures.ts';
import { packetContext } from '../packet-context.ts';
import { type PaperName, papers } from '../paper.ts';
import { type Choices, ofClasses, planOf, type Scenario, ScenarioError, scenarioOf } from '../scenario.ts';
import { aircraftLesson } from './aircraft-lesson.ts';
import { bookHtml, type Part } from './book.ts';
import { type Draft, draftChapter, finishChapter } from './chapter.ts';
import { indexPlaces } from './index-places.ts';
import type { PagesOf } from './page-number.ts';
import { terms } from './terms.ts';

export interface HandbookRequest {
  readonly school: School;
  readonly title: string;
  /** Names of lessons, in the order of the book. */
  readonly lessons: readonly string[];
  /** The aircraft that one volume is for; each has all chapters that are for its class. */
  readonly aircraft: readonly string[];
  readonly choices: Choices;
  /** How each choice was asked for, by the key of the front matter that it goes before. */
  readonly asked: Readonly<Record<string, string>>;
  readonly edition: Edition;
  readonly paper: PaperName;
  readonly date: Date;
  readonly version: string;
}

/** A book that wants printing, and what was found wrong on the way to it. */
export interface Handbook {
  /** The lessons' files, with their messages. */
  readonly files: readonly VFile[];
  /** What is wrong with what was asked for, each message with the option it belongs to. */
  readonly wrongChoices: readonly string[];
  /** The document, with the pages of a first print or without; undefined where anything is an error: no book lacks a chapter. */
  readonly html: ((pages?: PagesOf) => string) | undefined;
}

interface Read {
  readonly lesson: Lesson<PacketContext>;
  readonly file: VFile;
}

/** Binds lessons, flown for each aircraft of the volume, into one book. */
export async function makeHandbook(request: HandbookRequest): Promise<Handbook> {
  const { school, edition, paper, date, version } = request;
  const lessons: Read[] = [];
  for (const name of request.lessons) lessons.push(await readLesson(school, name));
  const files = lessons.map(({ file }) => file);
  const wrongChoices = new Set<string>();
  const flown: Scenario[] = [];
  const parts: Part[] = [];
  let number = 0;
  for (const [at, id] of request.aircraft.entries()) {
    const aircraft = school.fleet.get(id)!;
    const own = aircraftLesson(aircraft);
    const drafts: (Draft | undefined)[] = [draft(own, id, `a${at + 1}`, undefined)];
    for (const each of lessons) {
      const { frontMatter } = each.lesson;
      if (!frontMatter || ofClasses(school, frontMatter, [id]).length === 0) continue;
      number += 1;
      drafts.push(draft(each, id, `c${number}`, number));
    }
    // What is wrong with a page that the school did not write is wrong with its aircraft.
    if (own.file.messages.length > 0) files.push(own.file);
    const sound = drafts.filter((each) => each !== undefined);
    const index = indexPlaces(
      sound.flatMap((each) => each.parts),
      terms,
      `at-${at + 1}-`,
    );
    parts.push({ aircraft: aircraft.name, chapters: sound.map(finishChapter), index });
  }
  for (const file of files) removeRepeats(file);
  const isSound = wrongChoices.size === 0 && !files.some(hasErrors);
  return { files, wrongChoices: [...wrongChoices], html: isSound ? bind : undefined };

  function bind(pages?: PagesOf): string {
    const { name, source, cautions, faults, grading, units } = school;
    const mark = fingerprint({
      lessons: lessons.map(({ file }) => String(file)),
      pictures: lessons.flatMap(({ lesson }) => lesson.pictures.map(({ src }) => src)),
      flown,
      school: { name, source, cautions, faults: Object.fromEntries(faults), grading },
      fields: Object.fromEntries(school.airfields),
      title: request.title,
      units,
      paper,
      edition,
      version,
    });
    const { title } = request;
    const book = { title, school, edition, parts, units, paper: papers[paper], date, fingerprint: mark };
    return bookHtml(book, pages);
  }

  function draft({ lesson, file }: Read, aircraft: string, id: string, chapter: number | undefined) {
    if (!lesson.frontMatter || hasErrors(file)) return undefined;
    try {
      const scenario = scenarioOf(school, lesson.frontMatter, aircraft, request.choices);
      const plan = planOf(scenario);
      flown.push(scenario);
      const context = packetContext(school, scenario.request, plan, edition, papers[paper]);
      const body = renderLesson<PacketContext>(lesson, context, file);
      gradeStandards(body);
      return draftChapter({
        id,
        number: chapter,
        title: lesson.frontMatter.title,
        body: body.children as ElementContent[],
        plan,
        school,
        rules: scenario.airfield.rules,
        units: school.units,
      });
    } catch (error) {
      if (!(error instanceof ScenarioError)) throw error;
      const option = request.asked[error.key];
      if (option === undefined) reportScenario(error, lesson, file);
      else wrongChoices.add(`${option}: ${error.message}`);
      return undefined;
    }
  }
}

async function readLesson(school: School, name: string): Promise<Read> {
  const path = join(school.folder, `${name}.md`);
  const file = new VFile({ path, value: await readFile(path, 'utf8') });
  const pictures = picturesIn(school.folder);
  return { lesson: parseLesson<PacketContext>(file, components, { pictures }), file };
}
