import type { Element } from 'hast';
import { h } from 'hastscript';
import { numberText } from '../units/rounding.ts';
import { formatWind } from '../words/figures/format.ts';
import { capital } from '../words/figures/letter-case.ts';
import type { PageUnits } from '../words/figures/page-units.ts';
import { type Column, groupBy, groupedTable, type TableLine } from './check-tables.ts';
import type { FlownCheck } from './flown.ts';
import { numbersOf, type Published } from './published.ts';
import {
  allowedText,
  asGiven,
  asPrinted,
  differenceText,
  inputsText,
  publishedText,
  statusWords,
  stepFor,
  unitTexts,
  widerThanRounding,
} from './row-words.ts';
import type { CheckResult, Verdict } from './run-checks.ts';
import { topics } from './run-checks.ts';
import type { TradeResult } from './trade.ts';

const verdictWords: Readonly<Record<Verdict, string>> = {
  agrees: 'agrees',
  'printed-wrong': 'print wrong',
  disagrees: 'DISAGREES',
};

const numbers = (middle: string, ours: string): Column[] => [
  { head: 'Quantity' },
  { head: 'For' },
  { head: middle, number: true },
  { head: ours, number: true },
  { head: 'Difference', number: true },
  { head: 'Allowed', number: true },
  { head: 'Verdict' },
];

/** One section for each topic: its rows by document. */
export function publishedSections(results: readonly CheckResult[]): Element[] {
  return groupBy(results, ({ heading }) => heading).flatMap(([heading, ofTopic]) => {
    const about = topics.find((topic) => topic.heading === heading)?.about;
    const groups = groupBy(ofTopic, ({ row }) => `${row.source}|${row.status}`).map(([, ofDocument]) => ({
      title: [ofDocument[0]!.row.source, ' · ', h('small', statusWords[ofDocument[0]!.row.status])],
      lines: ofDocument.flatMap((result, i) => linesOf(result, ofDocument[i + 1])),
    }));
    return [
      h('h3', heading),
      ...(about ? [h('p', about)] : []),
      groupedTable('figures', numbers('Published', 'Ours'), groups),
    ];
  });
}

function linesOf(result: CheckResult, next: CheckResult | undefined): TableLine[] {
  const { row, at, theirs, ours, allowed, unit, verdict } = result;
  const units = unitTexts(unit);
  return theirs.map((value, i) => {
    const room = allowed[i]!;
    const step = stepFor(value, room);
    const last = i === theirs.length - 1 && next?.row !== row;
    return {
      cells: [
        asPrinted(row.quantity),
        at ?? inputsText(row),
        (result.form ? numberText(value, step) : publishedText(row, value)) + (units[i] ?? ''),
        numberText(ours[i]!, step),
        differenceText(ours[i]! - value, step),
        verdict === 'printed-wrong' ? '' : allowedText(value, room),
        verdictWords[verdict],
      ],
      note: last ? noteOf(result, widerThanRounding(value, room)) : undefined,
    };
  });
}

function noteOf({ row, form, verdict }: CheckResult, wide: boolean): string | undefined {
  const told = asPrinted(row.note);
  if (verdict === 'printed-wrong') return `The printed figure is wrong: ${told}.`;
  // A topic that has something to say of all its rows says it once, instead of the note on each.
  const spoken = told !== '' && !/^sin form/.test(told);
  return spoken && (form || wide) ? `${capital(told)}.` : undefined;
}

/** All misprints in one list, so that nobody has to look for them. */
export function wrongPrints(results: readonly CheckResult[]): Element[] {
  return results
    .filter(({ verdict }) => verdict === 'printed-wrong')
    .map(({ row, theirs, ours, unit }) => {
      const [sign] = unitTexts(unit);
      const own = numberText(ours[0]!, 10 ** -Math.max(1, String(theirs[0]).split('.')[1]?.length ?? 0));
      const given = `${asPrinted(row.quantity)}, ${inputsText(row)}`;
      return h('li', [
        `${given}: printed ${asGiven(theirs[0]!)}${sign}, by the document’s own formula ${own}${sign}. `,
        h('small', row.source),
      ]);
    });
}

export function flownTable(checks: readonly FlownCheck[]): Element {
  const groups = groupBy(checks, ({ aircraft }) => aircraft).map(([aircraft, own]) => ({
    title: [aircraft],
    lines: own.map(({ quantity, inputs, unit, formula, flown, allowed, verdict }) => {
      const step = stepFor(0, allowed);
      return {
        cells: [
          quantity,
          inputs,
          `${numberText(formula, formula === 0 ? 1 : step)}\u00a0${unit}`,
          numberText(flown, step),
          differenceText(flown - formula, step),
          allowedText(0, allowed),
          verdictWords[verdict],
        ],
      };
    }),
  }));
  return groupedTable('figures', numbers('By formula', 'Flown'), groups);
}

export function tradeTable(results: readonly TradeResult[], units: PageUnits): Element {
  const columns: Column[] = [
    { head: 'Aircraft' },
    { head: 'Wind at 10 m' },
    { head: 'Published', number: true },
    { head: 'This aircraft', number: true },
    { head: 'Verdict' },
  ];
  const groups = groupBy(results, ({ row }) => row.id).map(([, ofRow]) => {
    const { row } = ofRow[0]!;
    const given = inputsText(row);
    const [sign] = unitTexts(row.unit);
    return {
      title: [
        `${asPrinted(row.quantity)}${given === '' ? '' : `, ${given}`}. `,
        h('small', `${row.source}; ${statusWords[row.status]}.${row.note ? ` ${sentence(row.note)}` : ''}`),
      ],
      lines: ofRow.map(({ aircraft, wind, ours, fits }) => ({
        cells: [
          aircraft,
          wind === undefined ? 'any' : formatWind(wind.from, wind.speed, units),
          tradeText(row) + sign,
          ours === undefined ? '—' : numberText(ours, tradeStep(row, ours)) + sign,
          ours === undefined ? 'spot not reached so' : fits ? 'fits' : 'does not fit this aircraft',
        ],
      })),
    };
  });
  return groupedTable('trade', columns, groups);
}

const sentence = (text: string) => `${capital(text)}.`;

function tradeText(row: Published): string {
  const values = numbersOf(row).map(asGiven);
  return row.trade === 'between' ? values.join(' to ') : `${row.trade} ${values[0]}`;
}

/** Heights to 10 ft, as on every page; those near the ground to 1 ft. */
function tradeStep({ unit }: Published, value: number): number {
  if (unit === 'ft') return value < 50 ? 1 : 10;
  return unit === 'deg' ? 1 : 0.01;
}
