import { h } from 'hastscript';
import { z } from 'zod';
import { approaches } from '../../src/flight/approaches/approaches.ts';
import type { WindCase } from '../../src/flight/questions/wind-table.ts';
import { turnedWinds, windsWithin } from '../../src/flight/questions/winds-within.ts';
import type { Aircraft } from '../../src/flight/terms/aircraft.ts';
import { captionNumber } from '../../src/lesson/captions.ts';
import { DirectiveError, defineComponent } from '../../src/lesson/component.ts';
import { approachWords } from '../../src/words/approaches/approach-words.ts';
import { formatTurn } from '../../src/words/figures/format.ts';
import type { PageUnits } from '../../src/words/figures/page-units.ts';
import { formatMostSpeed } from '../../src/words/figures/safe-rounding.ts';
import { isFlyable, type WatchedRow, watchedRows } from '../../src/words/winds/watched-rows.ts';
import { crosswindWords, headwindWords, windWords } from '../../src/words/winds/wind-words.ts';
import type { PacketContext } from '../context.ts';
import { bewareOf, columnsOf, refusalOf } from './wind-columns.ts';
import { speeds, veers } from './winds.ts';

const usualAlong = '0kt 5kt 10kt 15kt';
const attributes = z.strictObject({
  along: speeds(usualAlong)
    .describe('Winds along the runway: a headwind, or with a minus a tailwind')
    .prefault(usualAlong),
  across: speeds('0kt -6kt 6kt')
    .describe('Winds across it: from the right, or with a minus from the left')
    .prefault('0kt'),
  veer: veers('0deg 20deg')
    .describe(
      'How far each wind turns clockwise from 10 m up to 1,000 ft, or with a minus the other way; left out, as over the airfield',
    )
    .optional(),
});

export const windTable = defineComponent<PacketContext, typeof attributes>({
  name: 'wind-table',
  form: 'leaf',
  onScreen: 'made-again',
  summary:
    'A table by wind: where the base turn starts, heights at the keys, steepest bank, crab on base; of a wind in which the ' +
    'approach is not sound, from which height it is.',
  attributes,
  example: '::wind-table{along="0kt 5kt 10kt 15kt" across="0kt"}',
  render: ({ ordinal, attributes: { along, across, veer }, context }) => {
    const { plan, request, units } = context;
    const { winds, over } = windsWithin(along, across, plan.aircraft);
    if (winds.length === 0) {
      throw new DirectiveError(
        `Every wind of this table is over the limits of the ${plan.aircraft.name} (${limitWords(context)}): write weaker ones`,
      );
    }
    const turns = veer ?? [request.airfield.windVeer ?? 0];
    const isTurning = plan.flown.windProfile === 'power' && turns.some((turn) => turn !== 0);
    if (veer && plan.flown.windProfile !== 'power') {
      throw new DirectiveError(
        'The wind of this packet does not follow the power law, and so it does not turn by a veer: leave out `veer`',
      );
    }
    const rows = watchedRows(request, turnedWinds(winds, turns), units);
    const shown = { across: across.length > 1 || across[0] !== 0, turning: isTurning };
    return [
      h('table', { className: ['wind-table'], id: `wind-table-${ordinal}` }, [
        h('caption', [
          captionNumber('Table'),
          ` By wind, ${approachWords(plan)}. ${captionWords(plan.approach)}`,
        ]),
        ...parts(rows, shown, plan.aircraft, units),
      ]),
      h('p', { className: ['source'] }, sourceOf(context, over)),
    ];
  },
});

/** Which columns for the wind itself a table has, besides the one along the runway. */
interface Shown {
  readonly across: boolean;
  readonly turning: boolean;
}

function parts(rows: readonly WatchedRow[], shown: Shown, aircraft: Aircraft, units: PageUnits) {
  const columns = columnsOf(rows, units, shown.turning);
  const number = { className: ['number'] };
  // With so many columns, cells take several lines too; a number keeps its unit.
  const whiteSpace = `white-space:${shown.turning ? 'normal' : 'nowrap'}`;
  const figure = shown.turning ? { ...number, style: whiteSpace } : number;
  const heads = [
    h('th', { scope: 'col' }, 'Along the runway'),
    ...(shown.across ? [h('th', { scope: 'col' }, 'Across it')] : []),
    ...(shown.turning ? [h('th', { scope: 'col' }, 'Turns with height')] : []),
    // A head may take several lines; otherwise the page would grow too wide for its paper.
    ...columns.map(({ head }) => h('th', { scope: 'col', ...number, style: 'white-space:normal' }, head)),
  ];
  // What is said about a wind takes the whole width under its figures: beside them its column would be a word wide.
  const body = rows.flatMap((row) => {
    const isFigures = isFlyable(row) && columns.length > 0;
    const said = isFlyable(row) ? bewareOf(row, aircraft, units) : refusalOf(row, aircraft, units);
    const isBoth = isFigures && said !== undefined;
    const wind = { rowSpan: isBoth ? 2 : undefined, style: whiteSpace };
    const words = said === undefined ? [] : [h('td', { colSpan: columns.length || 1 }, said)];
    const first = [
      h('th', { scope: 'row', ...wind }, headwindWords(row.headwind, units)),
      ...(shown.across ? [h('td', wind, crosswindWords(row.crosswind, units))] : []),
      ...(shown.turning ? [h('td', wind, formatTurn(row.veer ?? 0))] : []),
      ...(isFigures ? columns.map(({ cell }) => h('td', figure, cell(row, units) ?? '–')) : words),
    ];
    return [h('tr', first), ...(isBoth ? [h('tr', words)] : [])];
  });
  return [h('thead', [h('tr', heads)]), h('tbody', body)];
}

function captionWords(approach: PacketContext['plan']['approach']): string {
  if (approaches[approach].startsAt === 'base-key')
    return 'Heights are above the spot; the throttle closes at the base key.';
  return 'Heights are above the spot; seconds are counted from the downwind key. Crab: how far the nose points off the track.';
}

function limitWords({ plan, units }: PacketContext): string {
  const { wind, crosswind, tailwind } = plan.aircraft.limits;
  return [
    `wind ${formatMostSpeed(wind, units)}`,
    `crosswind ${formatMostSpeed(crosswind, units)}`,
    ...(tailwind === undefined ? [] : [`tailwind ${formatMostSpeed(tailwind, units)}`]),
  ].join(', ');
}

function sourceOf(context: PacketContext, over: readonly WindCase[]): string {
  const { plan, units } = context;
  const engine = plan.power === 'idle' ? 'engine idling' : 'engine stopped';
  const left =
    over.length === 0
      ? ''
      : ` Left out, being over its limits (${limitWords(context)}): ${over.map((wind) => windWords(wind, units)).join('; ')}.`;
  const source = plan.aircraft.source.trim().replace(/\.$/, '');
  return `Computed for ${plan.aircraft.name}, winds at 10 m, without gusts, ${engine}.${left} Source of the aircraft's figures: ${source}.`;
}
