import { VFile } from 'vfile';
import type { FrontMatter } from '../../lesson/front-matter.ts';
import { digest } from '../packet/fingerprint.ts';
import { attemptFor } from '../packet/lesson-messages.ts';
import { type LessonText, openText } from '../packet/lesson-text.ts';
import { once } from '../packet/once.ts';
import { ofClasses, type Scenario, scenarioOf } from '../packet/scenario.ts';
import { sayAgain } from '../printing/kept-messages.ts';
import type { Make, PrintOrder } from '../printing/order.ts';
import { packetKey, schoolFor } from '../printing/packet-key.ts';
import type { Handbook, ReadChapter } from './make-handbook.ts';
import type { Book, BookSource, Leaves, Volume } from './volume.ts';

/** Opens the lessons of a book, by the names of their files without `.md`. */
export async function openBook(source: BookSource, names: readonly string[]): Promise<Book> {
  const lessons = new Map<string, LessonText>();
  for (const name of names) lessons.set(name, await openText(source.school, name));
  const files = [...lessons.values()].map(({ file }) => file);
  return { ...source, lessons, files, wrongChoices: new Map() };
}

/** One volume of a book. It is printed twice: the first print tells on which page everything is. */
export function bookOrder(book: Book, volume: Volume): PrintOrder {
  const { school, title, lessons, files, date, common } = book;
  const { path, edition, paper, refused } = volume;
  const leaves = once(() => leavesOf(book, volume));
  const make: Make = async (print) => {
    const made = await bindVolume(book, volume, leaves());
    if (!made) {
      refused();
      return undefined;
    }
    const { findPages } = await import('./find-pages.ts');
    const { document, ...found } = made;
    const first = await print(document(), { draft: true });
    return { ...found, document: document(first && (await findPages(first))) };
  };
  return {
    path,
    date,
    key: () => {
      const bound = leaves();
      const keyOf = (scenario: Scenario, id: string, lesson = '') =>
        packetKey({ lesson, scenario, school: schoolFor(school, id), paper, edition, common });
      return (
        bound &&
        digest({
          title,
          source: school.source,
          parts: bound.map(({ id, own, chapters }) => [
            keyOf(own.scenario, id),
            ...chapters.map(({ lesson, scenario }) => keyOf(scenario, id, String(lessons.get(lesson)!.file))),
          ]),
        })
      );
    },
    open: async () => {
      if ((await chaptersOf(book)) && leaves()) return make;
      refused();
      return undefined;
    },
    hear: (message) => {
      const known = files.find((file) => file.basename === message.file);
      const file = known ?? new VFile({ path: message.file });
      if (!known) files.push(file);
      sayAgain(message, file);
    },
    graded: (grades) => book.tally?.add(grades),
  };
}

/** Flies and renders a volume; undefined where it lacks a chapter, or its pages about an aircraft: messages say why. */
export async function bindVolume(
  book: Book,
  volume: Volume,
  leaves = leavesOf(book, volume),
): Promise<Handbook | undefined> {
  const { school, title, date, version, files, tally } = book;
  const { edition, paper } = volume;
  const lessons = await chaptersOf(book);
  if (!lessons || !leaves) return undefined;
  const { makeHandbook } = await import('./make-handbook.ts');
  const say = (file: VFile) => void files.push(file);
  return makeHandbook({ school, title, date, version, edition, paper, leaves, lessons, say, tally });
}

/** Undefined where the setting of one of them is wrong; its message says what is wrong. */
function leavesOf(book: Book, { aircraft }: Volume): readonly Leaves[] | undefined {
  const { school, lessons, choices, asked, wrongChoices, files } = book;
  let number = 0;
  let isWhole = true;
  const found = aircraft.map((id): Leaves | undefined => {
    const { name } = school.fleet.get(id)!;
    const ownFile = new VFile({ path: `${name}.md` });
    const attempt = attemptFor({ file: ownFile, source: undefined }, asked, wrongChoices);
    const scenario = attempt(() => scenarioOf(school, ownPages(name), id, choices));
    if (ownFile.messages.length > 0) files.push(ownFile);
    const chapters: Leaves['chapters'][number][] = [];
    for (const [lesson, { file, source, frontMatter }] of lessons) {
      if (!frontMatter || ofClasses(school, frontMatter, [id]).length === 0) continue;
      number += 1;
      const flown = attemptFor(
        { file, source },
        asked,
        wrongChoices,
      )(() => scenarioOf(school, frontMatter, id, choices));
      if (flown) chapters.push({ lesson, scenario: flown, number });
      else isWhole = false;
    }
    return scenario && { id, own: { scenario, attempt }, chapters };
  });
  const whole = found.filter((each) => each !== undefined);
  return isWhole && whole.length === found.length ? whole : undefined;
}

/** What the pages about an aircraft are flown with: they print no approach, so none is refused. */
function ownPages(title: string): FrontMatter {
  return { title, approach: '180', shows: 'not-to-be-flown' };
}

/** Undefined where one has an error. */
async function chaptersOf({
  lessons,
  asked,
  wrongChoices,
}: Book): Promise<ReadonlyMap<string, ReadChapter> | undefined> {
  const chapters = new Map<string, ReadChapter>();
  for (const [name, { file, source, read }] of lessons) {
    const sound = await read();
    const attempt = attemptFor({ file, source }, asked, wrongChoices);
    if (sound) chapters.set(name, { ...sound, file, source, asked, attempt });
  }
  return chapters.size === lessons.size ? chapters : undefined;
}
