import type { Element, ElementContent, Properties } from 'hast';
import { h } from 'hastscript';
import type { KeyId } from '../src/flight/terms/key.ts';
import type { Plan } from '../src/flight/terms/plan.ts';
import { baseTurnPlace, type KeyRow, keyRows } from '../src/words/card/key-rows.ts';
import { keyGrade, markWords } from '../src/words/cautions/grade-words.ts';
import type { PageUnits } from '../src/words/figures/page-units.ts';
import { keyNames } from '../src/words/keys/key-names.ts';
import { flownFigure } from './grade-mark.ts';

/** The parts of a table of keys that a page styles in its own way. */
export type KeyTablePart = 'group' | 'head' | 'key' | 'height' | 'figure';

export interface KeyTableDress {
  /** `opens`: the first of an engine's columns, with a line between it and the columns to its left. */
  readonly of: (part: KeyTablePart, opens: boolean) => Properties;
  /** The number of a height. */
  readonly height: (number: string) => ElementContent[];
  /** What comes before a height at which a limit is passed. */
  readonly mark: (label: string) => Element;
}

/** `Engine idling`, `Engine stopped`. */
export function engineLabel({ power }: Pick<Plan, 'power'>): string {
  return power === 'idle' ? 'Engine idling' : 'Engine stopped';
}

/**
 * The keys of one flight, or of two side by side, each under the name of its engine: where to be, how high, between
 * which heights the spot is still made, and when. Units are in the head alone.
 */
export function keysTable(
  plans: readonly Plan[],
  units: PageUnits,
  dress: KeyTableDress,
  name: { readonly head: ElementContent; readonly label: Properties },
): Element {
  const rows = plans.map((plan) => keyRows(plan, units));
  const ids = order.filter((id) => rows.some((each) => each.some((row) => row.id === id)));
  const columns = ['Height', 'from', 'to', 's'];
  return h('table', name.label, [
    h('thead', [
      h('tr', [
        h('th', { scope: 'col', rowSpan: 2, ...dress.of('key', false) }, [name.head]),
        ...plans.map((plan) =>
          h('th', { scope: 'colgroup', colSpan: columns.length, ...dress.of('group', true) }, [
            engineLabel(plan),
          ]),
        ),
      ]),
      h(
        'tr',
        plans.flatMap(() =>
          columns.map((column, i) => h('th', { scope: 'col', ...dress.of('head', i === 0) }, column)),
        ),
      ),
    ]),
    h(
      'tbody',
      ids.map((id) =>
        h('tr', [
          h('th', { scope: 'row', ...dress.of('key', false) }, keyNames[id]),
          ...plans.flatMap((plan, i) =>
            cells(
              plan,
              rows[i]!.find((row) => row.id === id),
              baseTurnPlace(plan, units),
              dress,
            ),
          ),
        ]),
      ),
    ),
  ]);
}

const order: readonly KeyId[] = ['overhead', 'downwind-key', 'base-turn', 'base-key', 'final-turn', 'final'];

/** For one flight at one key; empty where the flight has no such key. */
function cells(
  plan: Plan,
  row: KeyRow | undefined,
  place: string | undefined,
  dress: KeyTableDress,
): Element[] {
  const figure = (text: string, colSpan?: number) =>
    h('td', { colSpan, ...dress.of('figure', false) }, text === '' ? [] : flownFigure(text, plan));
  if (!row) return [h('td', dress.of('height', true)), figure(''), figure(''), figure('')];
  const grade = keyGrade(plan, row.id);
  const number = numberOf(row.height);
  const height = plan.grade === 'not-to-be-flown' ? flownFigure(number, plan) : dress.height(number);
  return [
    h('td', dress.of('height', true), grade ? [dress.mark(markWords[grade]), ...height] : height),
    ...(row.id === 'base-turn' && place !== undefined
      ? [figure(place.replace(/ abeam$/, ''), 2)]
      : bandCells(row, figure)),
    figure(numberOf(row.time)),
  ];
}

function bandCells({ band }: KeyRow, figure: (text: string, colSpan?: number) => Element): Element[] {
  if (band === undefined) return [figure(''), figure('')];
  if ('none' in band) return [figure(band.none, 2)];
  return [band.low, band.high].map((edge) => figure(edge === 'the plan' ? 'plan' : numberOf(edge)));
}

/** A figure without its unit, which is in the head; words as they are. */
function numberOf(text: string): string {
  return /\d/.test(text) ? text.split('\u00a0')[0]! : text;
}
