import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Edition } from '../../../components/context.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { approachNames } from '../../words/approaches/approach-names.ts';
import { gradeNames } from '../../words/cautions/grade-words.ts';
import { formatWind } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { makeTableRooms, setText } from '../formats/document-tree.ts';
import type { PageDocument } from '../formats/page-document.ts';
import { pageBand } from '../packet/grade-bands.ts';
import { type Sized, sizesSentence } from '../packet/left-out.ts';
import { subjectLine } from '../packet/setting.ts';
import { editionNames, ruledMargin } from '../packet/sheet-parts.ts';
import { inputs, modelInShort, modelNotes, workedPlan } from '../packet/workings.ts';
import type { Paper } from '../paper/paper.ts';
import { bookCss, type RunningTitle } from './book-style.ts';
import type { Chapter } from './chapter.ts';
import { coverage } from './coverage.ts';
import type { IndexEntry } from './index-places.ts';
import { type PagesOf, pageNumber, pageRanges } from './page-number.ts';
import { terms } from './terms.ts';

/** The chapters of one aircraft, its own pages first. */
export interface Part {
  readonly aircraft: string;
  readonly chapters: readonly Chapter[];
  readonly index: readonly IndexEntry[];
}

export interface BookInput {
  readonly title: string;
  readonly school: { readonly name: string; readonly source: string; readonly cautions: readonly string[] };
  readonly edition: Edition;
  readonly parts: readonly Part[];
  readonly units: PageUnits;
  readonly paper: Paper;
  readonly date: Date;
  readonly fingerprint: string;
}

/** Printed in full where it first comes, and referred to from then on. */
interface Worked {
  readonly id: string;
  readonly name: string;
  readonly sized: Sized;
  readonly chapters: readonly Chapter[];
}

/**
 * A school's book as a document. `pages` says on which page each place is. That is known once the book has been
 * printed without it, because a page number takes the same room before it is known.
 */
export function bookDocument(input: BookInput, pages?: PagesOf): PageDocument {
  const { title, school, edition, parts, paper, date, fingerprint } = input;
  const day = date.toISOString().slice(0, 10);
  const aircraft = parts.map((part) => part.aircraft).join(', ');
  const origin = `${school.name} · ${editionNames[edition]} · ${day} · inputs ${fingerprint}`;
  const chapters = parts.flatMap((part) => part.chapters);
  const worked = distinctPlans(chapters, input.units);
  const back = [
    matter('coverage', 'What is taught and tested where', [coverage(chapters, pages)]),
    workings(worked, input),
    matter('glossary', 'Glossary', [glossary()]),
    matter('index', 'Index', [bookIndex(parts, pages)]),
  ];
  makeTableRooms(back);
  const front = [
    matter('contents', 'Contents', [contents(parts, worked, pages)]),
    matter('figures', 'List of figures', [figures(chapters, pages)]),
  ];
  const covered = cover(input, aircraft, day);
  // The chapters have been set already.
  setText([covered, ...front, ...back]);
  const body = h('body', { class: ['book', `edition-${edition}`] }, [
    ...(edition === 'student' ? [ruledMargin(paper)] : []),
    covered,
    h('main', [...front, ...chapters.map(({ section }) => section), ...back]),
  ]);
  const running: RunningTitle[] = [
    { page: 'matter', title, subject: aircraft, origin },
    ...chapters.map((chapter) => ({
      page: chapter.id,
      title: nameOf(chapter),
      subject: subjectLine(chapter.plan, input.units),
      origin,
      band: chapter.number === undefined ? undefined : pageBand(chapter.plan, input.units),
    })),
  ];
  const forWhom = edition === 'instructor' ? `, ${editionNames.instructor.toLowerCase()}` : '';
  return {
    title: `${title} — ${aircraft} — ${school.name}${forWhom}`,
    css: bookCss(paper, running),
    body,
    paper,
    date,
  };
}

/** In the contents: for a chapter whose plan is not to be flown. */
function gradeNote({ number, plan }: Chapter): string {
  return number !== undefined && plan.grade === 'not-to-be-flown' ? ` (${gradeNames[plan.grade]})` : '';
}

function nameOf({ number, title }: Chapter): string {
  return number === undefined ? title : `${number} ${title}`;
}

function matter(id: string, heading: string, content: readonly ElementContent[]): Element {
  return h('section', { class: ['matter', id], ariaLabelledBy: id }, [h('h1', { id }, heading), ...content]);
}

function cover({ title, school, edition, fingerprint }: BookInput, aircraft: string, day: string): Element {
  return h('header', { class: 'cover' }, [
    h('p', { class: 'cover-school' }, school.name),
    h('h1', { id: 'cover' }, title),
    h('p', { class: 'cover-aircraft' }, aircraft),
    h('p', { class: 'cover-edition' }, editionNames[edition]),
    h('div', { class: 'caution' }, [
      h('p', { class: 'label' }, 'Before you use this book'),
      h('ul', [
        h(
          'li',
          'This is training material. It does not replace instruction, and it is no permission to fly.',
        ),
        h(
          'li',
          "The aircraft's own handbook, local rules and the instructor's judgement prevail over everything printed here.",
        ),
        h(
          'li',
          'Every chapter names the aircraft, the runway, the wind and the air that its figures are computed for. On another day the figures are others.',
        ),
        ...school.cautions.map((line) => h('li', line)),
      ]),
    ]),
    h(
      'p',
      { class: 'cover-origin' },
      `Source of the school's own words: ${school.source.trim().replace(/\.$/, '')}. ${day} · inputs ${fingerprint}`,
    ),
  ]);
}

function contents(parts: readonly Part[], worked: readonly Worked[], pages: PagesOf | undefined): Element {
  const line = (id: string, text: string, className: string) =>
    h('p', { class: ['entry', className] }, [
      h('a', { href: `#${id}`, class: 'entry-text' }, text),
      h('span', { class: 'leader', ariaHidden: 'true' }),
      pageNumber(id, pages),
    ]);
  const chapterItem = (chapter: Chapter) =>
    h('li', [
      line(chapter.id, `${nameOf(chapter)}${gradeNote(chapter)}`, 'of-chapter'),
      h(
        'ol',
        chapter.sections.map(({ id, text }) => h('li', [line(id, text, 'of-section')])),
      ),
    ]);
  const backItems: [string, string][] = [
    ['coverage', 'What is taught and tested where'],
    ['workings', 'How the figures were worked out'],
    ['glossary', 'Glossary'],
    ['index', 'Index'],
  ];
  return h('nav', { ariaLabel: 'Contents' }, [
    h('ol', { class: 'contents-list' }, [
      h('li', [line('figures', 'List of figures', 'of-chapter')]),
      ...parts.flatMap(({ chapters }) => chapters.map(chapterItem)),
      ...backItems.map(([id, text]) =>
        h('li', [
          line(id, text, 'of-chapter'),
          ...(id === 'workings'
            ? [
                h(
                  'ol',
                  worked.map(({ id, name }) => h('li', [line(id, name, 'of-section')])),
                ),
              ]
            : []),
        ]),
      ),
    ]),
  ]);
}

function figures(chapters: readonly Chapter[], pages: PagesOf | undefined): Element {
  return h(
    'ol',
    { class: 'contents-list figure-list' },
    chapters
      .flatMap((chapter) => chapter.figures)
      .map(({ id, text }) =>
        h('li', [
          h('p', { class: ['entry', 'of-section'] }, [
            h('a', { href: `#${id}`, class: 'entry-text' }, text),
            h('span', { class: 'leader', ariaHidden: 'true' }),
            pageNumber(id, pages),
          ]),
        ]),
      ),
  );
}

/** Chapters for one aircraft in one wind fly the same plan: it is worked out once. */
function distinctPlans(chapters: readonly Chapter[], units: PageUnits): Worked[] {
  const plans = new Map<string, { first: Chapter; chapters: Chapter[] }>();
  for (const chapter of chapters) {
    const { aircraft, airfield, runway, circuit, approach, power, air, wind, flown, solved } = chapter.plan;
    const key = JSON.stringify([
      aircraft,
      airfield,
      runway,
      circuit,
      approach,
      power,
      air,
      wind,
      flown,
      solved,
    ]);
    const known = plans.get(key);
    if (known) known.chapters.push(chapter);
    else plans.set(key, { first: chapter, chapters: [chapter] });
  }
  return [...plans.values()].map(({ first: { plan, sizes }, chapters }, at) => ({
    id: `worked-${at + 1}`,
    name: nameOfPlan(plan, units),
    sized: { plan, sizes: sizes() },
    chapters,
  }));
}

function nameOfPlan(plan: Plan, units: PageUnits): string {
  const { from, speed } = plan.flown.surfaceWind;
  const engine = plan.power === 'idle' ? 'engine idling' : 'engine stopped';
  return `${plan.aircraft.name}: ${approachNames[plan.approach].full}, ${engine}, wind ${formatWind(from, speed, units)}`;
}

function workings(worked: readonly Worked[], { units }: BookInput): Element {
  const said = new Map<number, string>();
  const content = h('section', { class: ['matter', 'workings'], ariaLabelledBy: 'workings' }, [
    h('h1', { id: 'workings' }, 'How the figures were worked out'),
    modelInShort(),
    ...modelNotes(units, { level: 'h2', plans: worked.map(({ sized }) => sized.plan) }),
    ...worked.flatMap(({ id, name, sized, chapters: those }) => [
      h('h2', { id, class: 'worked' }, name),
      h('p', [
        `For ${chapterList(those)}, at ${sized.plan.airfield.name}, runway ${sized.plan.runway.name}.`,
      ]),
      h('h3', 'What went in'),
      ...inputs(sized.plan, units, said),
      ...workedPlan(sized, units),
      h('p', sizesSentence(sized, units)),
    ]),
  ]);
  return content;
}

function chapterList(chapters: readonly Chapter[]): string {
  const numbers = chapters.flatMap(({ number }) => (number === undefined ? [] : [String(number)]));
  const pages = chapters.some(({ number }) => number === undefined) ? ["the aircraft's own pages"] : [];
  const named =
    numbers.length === 0 ? [] : [`${numbers.length === 1 ? 'chapter' : 'chapters'} ${joined(numbers)}`];
  return [...pages, ...named].join(' and ');
}

function joined(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

function glossary(): Element {
  return h(
    'dl',
    { class: 'glossary-list' },
    terms.map(({ term, means }) => h('div', [h('dt', term), h('dd', means)])),
  );
}

function bookIndex(parts: readonly Part[], pages: PagesOf | undefined): Element {
  const found = parts.flatMap((part) => part.index);
  const ids = (term: string) => found.filter((entry) => entry.term === term).flatMap((entry) => entry.ids);
  return h(
    'ul',
    { class: 'index-list' },
    terms
      .map(({ term }) => ({ term, ids: ids(term) }))
      .filter((entry) => entry.ids.length > 0)
      .map((entry) => h('li', [`${entry.term} `, ...pageRanges(entry.ids, pages)])),
  );
}
