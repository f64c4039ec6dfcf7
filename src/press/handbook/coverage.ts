import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Chapter, Place } from './chapter.ts';
import { type PagesOf, pageNumber } from './page-number.ts';

/** A standard that the book holds a student to. */
interface Standard {
  readonly text: string;
  readonly taught: { readonly chapter: Chapter; readonly place: Place }[];
}

/** Which chapter teaches and which tests each standard: as the lessons say themselves, standard by standard. */
export function coverage(chapters: readonly Chapter[], pages: PagesOf | undefined): Element {
  const col = { scope: 'col' };
  return h('table', { class: 'coverage' }, [
    h('thead', [h('tr', [h('th', col, 'Standard'), h('th', col, 'Taught in'), h('th', col, 'Tested by')])]),
    ...chapters
      .map((chapter) => ({ chapter, standards: standardsFirstIn(chapter, chapters) }))
      .filter(({ standards }) => standards.length > 0)
      .map(({ chapter, standards }) =>
        h('tbody', [
          h('tr', [h('th', { scope: 'rowgroup', colSpan: 3, class: 'chapter-row' }, nameOf(chapter))]),
          ...standards.map((standard) => row(standard, pages)),
        ]),
      ),
  ]);
}

/** One that several chapters have stands where it comes first. */
function standardsFirstIn(chapter: Chapter, chapters: readonly Chapter[]): Standard[] {
  const before = chapters.slice(0, chapters.indexOf(chapter));
  return chapter.standards
    .filter(({ text }) => !before.some((earlier) => earlier.standards.some((one) => alike(one.text, text))))
    .map(({ text }) => ({
      text,
      taught: chapters.flatMap((each) => {
        const place = each.standards.find((one) => alike(one.text, text));
        return place ? [{ chapter: each, place }] : [];
      }),
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
  const tests = taught.flatMap(({ chapter }) => [
    ...chapter.debriefs.map((id) => ({ what: 'debrief form', id })),
    ...chapter.exercises.map((id) => ({ what: 'questions', id })),
  ]);
  return h('tr', [
    h('td', text),
    h(
      'td',
      listed(
        taught.map(({ chapter, place }) => [
          chapter.number === undefined ? chapter.title : `chapter ${chapter.number}`,
          ', page ',
          pageNumber(place.id, pages),
        ]),
      ),
    ),
    h(
      'td',
      tests.length === 0
        ? 'nothing in this book'
        : listed(tests.map(({ what, id }) => [`${what}, page `, pageNumber(id, pages)])),
    ),
  ]);
}

function listed(items: readonly (string | Element)[][]): (string | Element)[] {
  return items.flatMap((item, at) => [...(at === 0 ? [] : ['; ']), ...item]);
}

function nameOf({ number, title }: Chapter): string {
  return number === undefined ? title : `${number} ${title}`;
}
