import { headwind as headwindOf } from '../../flight/air/wind.ts';
import { approaches } from '../../flight/approaches/approaches.ts';
import { isSound } from '../../flight/questions/least-sound-start.ts';
import { windsWithin } from '../../flight/questions/winds-within.ts';
import type { ApproachOptions } from '../../flight/terms/approach.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { KeyPosition, Plan, PlanRequest } from '../../flight/terms/plan.ts';
import { cautionNames } from '../cautions/caution-line.ts';
import { formatDistance, formatHeight, formatSpeed, formatTime, speedStep } from '../figures/format.ts';
import type { PageUnits } from '../figures/page-units.ts';
import { requestSentence } from '../refusals/request-words.ts';
import { distanceOut } from '../winds/start-words.ts';
import { type WatchedRow, watchedRows } from '../winds/watched-rows.ts';

/** Takes the place of a figure in a wind in which the approach is not sound as planned. */
export const notSound = '×';

/** The approach in several winds along the runway, for a card: figures without their units, which are in the names. */
export interface ByWind {
  /** `headwind, kt`: the head of the numbers in `winds`; a tailwind among them is named as one. */
  readonly head: string;
  readonly winds: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
  /** What the mark means and, for winds in which no height helps, why: sentences. */
  readonly notes: readonly string[];
}

/** In the units of speed: round figures between the winds. */
const steps = { kt: 5, 'km/h': 10, mph: 5 } as const;

/** More columns than this are not read at arm's length. */
const most = 7;

/**
 * What the wind along the runway changes most: when the base turn starts, and how high the base key is; or, for an
 * approach that begins on base, how far out at the given height, how high at the given distance, or both. From no
 * wind, or from the plan's tailwind where it has one, to the aircraft's limit. A wind in which the approach needs a
 * warning has no figure, but the least height from which it needs none.
 */
export function byWind(plan: Plan, request: PlanRequest, units: PageUnits): ByWind {
  const { aircraft, flown, runway } = plan;
  const along = alongOf(headwindOf(flown.surfaceWind, runway.heading), aircraft.limits.wind, units);
  const { winds } = windsWithin(along, [0], aircraft);
  const rows = watchedRows(request, winds, units);
  const behind = rows.some(({ headwind }) => headwind < 0);
  const figures = figureRows(plan, request, units).map(({ name, figure }) => ({
    name,
    cells: rows.map((row) => (isSound(row) ? numberOf(figure(row)) : notSound)),
  }));
  const starts = startRows(rows, units);
  // Rows of nothing but marks say nothing that the heights under them do not.
  const isBare = rows.every((row) => !isSound(row));
  return {
    head: `${behind ? 'head or tail' : 'headwind'}, ${units.speed}`,
    winds: rows.map(({ headwind }) => windHead(headwind, units)),
    rows: [...(isBare ? figures.slice(0, starts.length > 0 ? 0 : 1) : figures), ...starts],
    notes: notesOf(rows, units),
  };
}

/** The step doubles until the columns are few enough. */
function alongOf(today: number, limit: number, units: PageUnits, times = 1): number[] {
  const step = steps[units.speed] * times * speedStep(units);
  const isTail = formatSpeed(Math.abs(today), units) !== formatSpeed(0, units) && today < 0;
  const first = isTail ? Math.floor(today / step + 1e-9) : 0;
  const count = Math.floor(limit / step + 1e-9) - first + 1;
  if (count > most) return alongOf(today, limit, units, 2 * times);
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

/** A number without a word is a headwind. */
function windHead(headwind: number, units: PageUnits): string {
  const size = numberOf(formatSpeed(Math.abs(headwind), units));
  return headwind < 0 ? `tail ${size}` : size;
}

interface FigureRow {
  readonly name: string;
  readonly figure: (row: WatchedRow) => string | undefined;
}

/** Whether the place of the start is asked for, in place of its height. */
function isStartFixed({ approach, options }: PlanRequest): boolean {
  const own: Readonly<Record<string, unknown>> = options?.[approach as keyof ApproachOptions] ?? {};
  return (approaches[approach].insteadOfHeight ?? []).some((option) => own[option] !== undefined);
}

function figureRows({ approach }: Plan, request: PlanRequest, units: PageUnits): FigureRow[] {
  const atBase = (figure: (key: KeyPosition) => string) => (row: WatchedRow) => {
    const key = row.keys.find(({ id }) => id === 'base-key');
    return key && figure(key);
  };
  const height = atBase((key) => formatHeight(key.height, units));
  // The base key of the 90 lies as far before the spot as to its side.
  const out = atBase((key) => formatDistance(Math.abs(key.across), units));
  if (approaches[approach].startsAt !== 'base-key') {
    return [
      {
        name: 'Base turn, s after abeam',
        figure: ({ seconds }) => (seconds === undefined ? undefined : formatTime(seconds)),
      },
      { name: `Base key, ${units.height}`, figure: height },
    ];
  }
  const throttle = `Throttle closed, ${units.height}`;
  if (request.height !== undefined) return [{ name: `Throttle closed, ${units.distance} out`, figure: out }];
  // Where neither is given, both change with the wind, and a height without its place would be flown from the wrong
  // one.
  return isStartFixed(request)
    ? [{ name: throttle, figure: height }]
    : [
        { name: throttle, figure: height },
        { name: `and so far out, ${units.distance}`, figure: out },
      ];
}

/** For winds in which the approach is not sound, the least height that works, by the key that it is for. */
function startRows(rows: readonly WatchedRow[], units: PageUnits): ByWind['rows'] {
  const starts = rows.map(({ start }) => start);
  const at = [...new Set(starts.flatMap((start) => (start?.height === undefined ? [] : [start.at])))];
  if (at.length === 0) return [];
  return at.flatMap((key) => {
    const cells = starts.map((start) => {
      if (start === undefined || (start.height !== undefined && start.at !== key)) return '';
      return start.height === undefined ? 'none' : numberOf(formatHeight(start.height, units));
    });
    const name = `${notSound} unless ${startNames[key] ?? 'begun at'}, ${units.height}`;
    if (key !== 'base-key') return [{ name, cells }];
    const out = starts.map((start) => numberOf(start && distanceOut(start, units)));
    return [
      { name, cells },
      { name: `${notSound} and so far out, ${units.distance}`, cells: out },
    ];
  });
}

const startNames: Partial<Record<KeyId, string>> = {
  'downwind-key': 'key at',
  'base-key': 'closed at',
  overhead: 'overhead at',
};

function notesOf(rows: readonly WatchedRow[], units: PageUnits): string[] {
  const unsound = rows.filter(({ start }) => start !== undefined);
  if (unsound.length === 0) return [];
  const hopeless = unsound.filter(({ start }) => start?.height === undefined);
  const whys = [...new Set(hopeless.map((row) => whyNot(row, units)))];
  const windsOf = (why: string) =>
    hopeless.filter((row) => whyNot(row, units) === why).map(({ headwind }) => windHead(headwind, units));
  const said = whys.map((why) => (whys.length > 1 ? `${windsOf(why).join(', ')} ${why}` : why)).join('; ');
  // Where no wind has a height, there is no row for `none` to be in.
  if (hopeless.length === unsound.length) return [`${notSound} not sound from any height: ${said}.`];
  return [`${notSound} not sound${said === '' ? '' : `; none: ${said}`}.`];
}

/** What rules out every height, without figures. */
function whyNot({ start, cautions, refused }: WatchedRow, units: PageUnits): string {
  const against = start?.height === undefined && start?.against.length ? start.against : cautions;
  const names = against
    .filter(({ grade }) => grade !== 'worth-knowing')
    .map(({ code }) => cautionNames[code]);
  return names.length > 0
    ? [...new Set(names)].join(', ')
    : refused
      ? requestSentence(refused, units)
      : 'it cannot be flown';
}

/** A figure without its unit, which is in the name of its row. */
function numberOf(text: string | undefined): string {
  return text === undefined ? '' : (text.split('\u00a0')[0] ?? '');
}
