import type { ElementContent } from 'hast';
import type { VFile } from 'vfile';
import type { Edition } from '../../../components/context.ts';
import type { PlanGrade } from '../../flight/terms/caution.ts';
import { renderLesson } from '../../lesson/render-lesson.ts';
import { hasErrors } from '../../messages/failures.ts';
import type { YamlSource } from '../../school/yaml-source.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { fingerprint } from '../packet/fingerprint.ts';
import { countRefused } from '../packet/grade-tally.ts';
import type { Attempt } from '../packet/lesson-messages.ts';
import { packetContext } from '../packet/packet-context.ts';
import { planMessages } from '../packet/plan-messages.ts';
import type { SoundLesson } from '../packet/read-lesson.ts';
import { sayOfPlan } from '../packet/say-of-plan.ts';
import { planOf, type Scenario } from '../packet/scenario.ts';
import { type PaperName, papers } from '../paper/paper.ts';
import type { Made } from '../printing/order.ts';
import { schoolFor } from '../printing/packet-key.ts';
import { aircraftLesson } from './aircraft-lesson.ts';
import { bookDocument, type Part } from './book.ts';
import { type Draft, draftChapter, finishChapter } from './chapter.ts';
import { indexPlaces } from './index-places.ts';
import type { PagesOf } from './page-number.ts';
import { terms } from './terms.ts';
import type { BookSource, Leaves } from './volume.ts';

/** A lesson of the book, read in full. */
export interface ReadChapter extends SoundLesson {
  readonly file: VFile;
  /** For its front matter. */
  readonly source: YamlSource | undefined;
  /** What was asked for in its place, by its key. */
  readonly asked: Readonly<Record<string, string>>;
  readonly attempt: Attempt;
}

export interface HandbookRequest extends Pick<BookSource, 'school' | 'title' | 'date' | 'version' | 'tally'> {
  readonly leaves: readonly Leaves[];
  /** By the name of the lesson. */
  readonly lessons: ReadonlyMap<string, ReadChapter>;
  readonly edition: Edition;
  readonly paper: PaperName;
  /** Takes the file with what is wrong on a page that the school did not write. */
  readonly say: (file: VFile) => void;
}

/** A book to be printed. */
export interface Handbook extends Pick<Made, 'messages' | 'pictures' | 'grades'> {
  /** The document, with the page numbers of a first print or without. */
  readonly document: (pages?: PagesOf) => PageDocument;
}

/**
 * Binds lessons, flown for each aircraft of the volume, into one book. Undefined where one of them cannot be bound:
 * its message says why.
 */
export function makeHandbook(request: HandbookRequest): Handbook | undefined {
  const { school, title, edition, paper, date, version, leaves, lessons, say, tally } = request;
  const { name, source, cautions, faults, grading, units } = school;
  const messages = [...lessons.values()].flatMap((each) => each.messages);
  const flown: Scenario[] = [];
  const parts: Part[] = [];
  const grades: PlanGrade[] = [];
  let isWhole = true;
  for (const [at, { id, own, chapters }] of leaves.entries()) {
    const aircraft = school.fleet.get(id)!;
    const drafts: Draft[] = [];
    const draft = (chapter: ReadChapter, scenario: Scenario, place: string, number: number | undefined) => {
      const before = chapter.file.messages.length;
      const plan = chapter.attempt(() => countRefused(tally, () => planOf(scenario)));
      if (plan && number !== undefined) {
        grades.push(plan.grade);
        for (const message of planMessages(plan, scenario)) sayOfPlan(message, chapter);
      }
      if (!plan) {
        isWhole = false;
        return;
      }
      const { request } = scenario;
      const context = packetContext(schoolFor(school, id), { request, plan }, edition, papers[paper]);
      const body = renderLesson(chapter.lesson, context, chapter.file);
      flown.push(scenario);
      messages.push(...chapter.file.messages.slice(before));
      drafts.push(
        draftChapter({
          id: place,
          number,
          title: chapter.lesson.frontMatter!.title,
          body: body.children as ElementContent[],
          plan,
          request,
          school,
          rules: scenario.airfield.rules,
          day: scenario.day,
          units,
        }),
      );
    };
    const pages = aircraftLesson(aircraft);
    const ownChapter = { ...pages, source: undefined, asked: {}, messages: [], attempt: own.attempt };
    draft(ownChapter, own.scenario, `a${at + 1}`, undefined);
    // What is wrong with a page that the school did not write is wrong with its aircraft.
    if (pages.file.messages.length > 0) say(pages.file);
    if (hasErrors(pages.file)) isWhole = false;
    for (const { lesson, scenario, number } of chapters)
      draft(lessons.get(lesson)!, scenario, `c${number}`, number);
    const places = indexPlaces(
      drafts.flatMap((each) => each.parts),
      terms,
      `at-${at + 1}-`,
    );
    parts.push({ aircraft: aircraft.name, chapters: drafts.map(finishChapter), index: places });
  }
  if (!isWhole || messages.some(({ fatal }) => fatal)) {
    tally?.add(grades);
    return undefined;
  }
  const read = [...lessons.values()];
  const pictures = read.flatMap(({ lesson }) => lesson.pictures);
  const mark = fingerprint({
    lessons: read.map(({ file }) => String(file)),
    pictures: pictures.map(({ src }) => src),
    flown,
    school: { name, source, cautions, faults: Object.fromEntries(faults), grading },
    fields: Object.fromEntries(school.airfields),
    title,
    units,
    paper,
    edition,
    version,
  });
  const book = { title, school, edition, parts, units, paper: papers[paper], date, fingerprint: mark };
  return { messages, pictures, grades, document: (pages) => bookDocument(book, pages) };
}
