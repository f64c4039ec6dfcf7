import { h } from 'hastscript';
import { makeTableRooms, setText } from '../press/formats/document-tree.ts';
import type { PageDocument } from '../press/formats/page-document.ts';
import { fingerprint } from '../press/packet/fingerprint.ts';
import { pageCss } from '../press/paper/page-style.ts';
import type { Paper } from '../press/paper/paper.ts';
import type { PageUnits } from '../words/figures/page-units.ts';
import { type AllChecks, type Summary, summaryOf } from './all-checks.ts';
import { flownTable, publishedSections, tradeTable, wrongPrints } from './check-sections.ts';
import { checksCss } from './checks-style.ts';
import { type HandbooksBeside, handbooksSection } from './handbooks-section.ts';

export interface ChecksPage {
  readonly checks: AllChecks;
  /** What published handbooks teach, beside the school's lessons; undefined where the school has no such comparison. */
  readonly handbooks: HandbooksBeside | undefined;
  readonly school: string;
  readonly units: PageUnits;
  readonly paper: Paper;
  readonly date: Date;
  /** Of this program. */
  readonly version: string;
}

const title = 'The computation, checked';

/** Every check of the computation core as a document, for a reader who doubts it. */
export function checksDocument(asked: ChecksPage): PageDocument {
  const { checks, handbooks, school, units, paper, date, version } = asked;
  const summary = summaryOf(checks);
  const day = date.toISOString().slice(0, 10);
  const mark = `${day} · results ${fingerprint({ checks, handbooks, version })}`;
  const disagreeing = summary.disagree + summary.flownDisagree > 0;
  const content = h('body', { class: 'checks-page' }, [
    h('header', { class: 'masthead' }, [
      h('p', { class: 'school' }, [h('span', school), h('span', mark)]),
      h('h1', title),
      h(
        'dl',
        { class: 'setting' },
        counts(summary).map(([label, value, detail]) =>
          h('div', [h('dt', label), h('dd', [value, ' ', h('small', detail)])]),
        ),
      ),
    ]),
    h('main', [
      h('h2', 'How to read this'),
      ...howToRead.map((text) => h('p', text)),
      ...(disagreeing
        ? [
            h(
              'p',
              { class: 'caution' },
              'Something disagrees. Do not use these figures until it is explained.',
            ),
          ]
        : []),
      h('h2', 'Printed figures that are wrong'),
      h('ul', { class: 'wrong' }, wrongPrints(checks.published)),
      h('h2', 'Published figures'),
      ...publishedSections(checks.published),
      h('h2', 'Flown, beside the formula'),
      h('p', flownWords),
      flownTable(checks.flown),
      h('h2', 'Figures of the trade, and these aircraft'),
      h('p', tradeWords),
      tradeTable(checks.trade, units),
      ...(handbooks ? handbooksSection(handbooks) : []),
    ]),
  ]);
  makeTableRooms(content.children);
  setText(content.children);
  const furniture = { title, subject: `Chalkwing ${version}`, origin: `${school} · ${mark}` };
  return { title, css: pageCss(paper, furniture) + checksCss, body: content, paper, date };
}

const howToRead = [
  'Every line holds a figure that somebody else published against the same figure from the computation core that flies the packets. Ours is computed when this page is made, by the code that flies the packets; nothing is typed in but the published figures.',
  'A line agrees where the difference is no more than allowed. What is allowed is about the rounding of the printed figure, its last digit; where it is more, the line below gives what is exact, or says why. Each document is named above its lines, and whether the figure was read in it or recalled from it: the second is worth less.',
  'Where the printed figure itself is wrong, the line says how, and the core is held against the document’s own formula. It is never bent to match a misprint.',
];

const flownWords =
  'Here each aircraft is flown through the integrator that flies the packets, and the result is held against a formula solved apart from it, with the aircraft’s own polar. Halving the step of the integrator must not move the touchdown: by formula it moves by nothing.';

const tradeWords =
  'Handbooks give heights and places for “an aircraft”. A given one, with its own glide and bank, may not come out there, and the core is not tuned until it does. This is information, not a failure: use the figures of the aircraft in the packet, and expect these to differ where it says so. The wind grows with height by the power law, the spot lies where it is on the school’s runway, the engine idles.';

function counts(summary: Summary): [string, string, string][] {
  const { rows, found, memory, agree, printedWrong, disagree, trade, tradeUnfit } = summary;
  const { flown, flownDisagree } = summary;
  return [
    ['Published rows', String(rows), `${found} read in the document or a reprint, ${memory} from memory`],
    ['Agree', String(agree), 'within what the row allows'],
    ['Disagree', String(disagree), disagree === 0 ? 'none' : 'named DISAGREES below'],
    ['Printed figure wrong', String(printedWrong), 'and how, below'],
    ['Figures of the trade', String(trade), `${tradeUnfit} do not fit every aircraft here`],
    ['Flown beside a formula', `${flown - flownDisagree} of ${flown}`, 'agree'],
  ];
}
