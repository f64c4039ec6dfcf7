import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Chapter } from './chapter.ts';
import { type PagesOf, pageNumber } from './page-number.ts';

/** A standard that the book holds a student to. */
interface Standard {
  readonly text: string;
  readonly taught: readonly Chapter[];
}

/**
 * Which chapter teaches each standard and which tests it, as the lessons themselves say, standard by standard. A
 * debrief form grades every standard of its chapter; the questions are about the chapter as a whole.
 */
export function coverage(chapters: readonly Chapter[], pages: PagesOf | undefined): Element {
  const col = { scope: 'col' };
  return h('table', { class: 'coverage' }, [
    h('thead', [h('tr', [h('th', col, 'Standard'), h('th', col, 'Taught in'), h('th', col, 'Graded on')])]),
    ...chapters
      .map((chapter) => ({ chapter, standards: standardsFirstIn(chapter, chapters) }))
      .filter(({ standards }) => standards.length > 0)
      .map(({ chapter, standards }) =>
        h('tbody', [
          h('tr', [
            h('th', { scope: 'rowgroup', colSpan: 3, class: 'chapter-row' }, [
              nameOf(chapter),
              ...chapter.exercises.flatMap((id) => [
                h('span', { class: 'chapter-questions' }, [
                  ' Questions on page\u00a0',
                  pageNumber(id, pages),
                ]),
              ]),
            ]),
          ]),
          ...standards.map((standard) => row(standard, pages)),
        ]),
      ),
  ]);
}

/** A standard that several chapters have is listed where it first comes. */
function standardsFirstIn(chapter: Chapter, chapters: readonly Chapter[]): Standard[] {
  const before = chapters.slice(0, chapters.indexOf(chapter));
  return chapter.standards
    .filter(({ text }) => !before.some((earlier) => earlier.standards.some((one) => alike(one.text, text))))
    .map(({ text }) => ({
      text,
      taught: chapters.filter((each) => each.standards.some((one) => alike(one.text, text))),
    }));
}

function alike(a: string, b: string): boolean {
  const plain = (text: string) =>
    text
      .toLowerCase()
      .replace(/[\s.]+/g, ' ')
      .trim();
  return plain(a) === plain(b);
}

function row({ text, taught }: Standard, pages: PagesOf | undefined): Element {
  const forms = taught.flatMap((chapter) => chapter.debriefs);
  return h('tr', [
    h('td', text),
    h(
      'td',
      listed(
        taught.map((chapter) => [
          chapter.number === undefined ? chapter.title : `chapter\u00a0${chapter.number}`,
          ', page\u00a0',
          pageNumber(chapter.id, pages),
        ]),
      ),
    ),
    h(
      'td',
      forms.length === 0
        ? 'no form in this book'
        : listed(forms.map((id) => ['page\u00a0', pageNumber(id, pages)])),
    ),
  ]);
}

function listed(items: readonly (string | Element)[][]): (string | Element)[] {
  return items.flatMap((item, at) => [...(at === 0 ? [] : ['; ']), ...item]);
}

function nameOf({ number, title }: Chapter): string {
  return number === undefined ? title : `${number} ${title}`;
}
