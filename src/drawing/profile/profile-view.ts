import type { Plan } from '../../flight/terms/plan.ts';
import { metresPerFoot } from '../../units/factors.ts';
import { formatHeight } from '../../words/figures/format.ts';
import { lengthUnitSize } from '../../words/figures/unit-size.ts';
import type { Box, Point } from '../kit/geometry.ts';
import { face, size } from '../kit/ink.ts';
import { niceTicks, roundBelow } from '../kit/scale.ts';
import { wholePixels } from '../kit/sheet.ts';
import type { FaultDrawingOptions } from '../shared/drawn-fault.ts';
import { distanceToGo } from '../shared/track-line.ts';
import { faultPlaces } from './profile-fault-places.ts';
import { type PhaseName, phaseRows } from './profile-phases.ts';

/** Room: at least 85 by 55 mm. */
export interface ProfileOptions extends FaultDrawingOptions {
  /** m: by which the turn to final is complete, where the school asks for more than 300 ft. */
  readonly leastFinal?: number;
}

/** Where distances to go and heights are on the page. */
export interface ProfileView {
  /** The area between the axes, mm. */
  readonly plot: Box;
  /** m: distance to go at the left and right side of the plot; the right one is negative where the wheels touch short of the spot, or a fault ends past it. */
  readonly farthest: number;
  readonly nearest: number;
  /** mm on the page to a metre of distance. */
  readonly perMetre: number;
  readonly exaggeration: number;
  /** m over the ground from each sample of the track to touchdown. */
  readonly toGo: readonly number[];
  readonly phases: readonly PhaseName[];
  /** mm under the distance axis. */
  readonly foot: number;
  /** m. */
  readonly distanceTicks: readonly number[];
  readonly heightTicks: readonly number[];
  /** m: by which the turn to final is complete. */
  readonly leastFinal: number;
  /** m: the bar of a gate that goes higher is cut here; otherwise it would leave the flight no room. */
  readonly barsTo: number;
}

/** m: the height by which the turn to final is complete, where the school asks for no more: `final-turn-low`. */
const finalTurnHeight = 300 * metresPerFoot;

/** A bar is no taller than this many times the highest point of the flight. */
const barsOver = 1.4;

const exaggerations = [10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1];
/** mm. */
const right = 12;
const top = 4;
/** From the height axis to the start of the track. */
const lead = 4;
/** Between two numbers on an axis, mm. */
const tickPitch = { distance: 15, past: 11, height: 7 };
/** Under the distance axis, mm: its numbers, the bars of the phases, a row of their names. */
export const foot = { numbers: 5.6, bracket: 2.4, row: 3.6 };

/** More rows of names than any approach has needed. */
const mostRows = 4;
/** mm: a plot lower than this cannot be read. */
const lowestPlot = 12;

function footHeight(noteLines: number, rows: number): number {
  return foot.numbers + foot.bracket + rows * foot.row + noteLines * size.note * face.leading + 2;
}

/**
 * Fits the profile into its room on the paper; `noteLines` lines of text go under it, and `headroom` mm are left
 * free above it.
 * Undefined where there is no room.
 */
export function profileView(
  plan: Plan,
  options: ProfileOptions,
  noteLines: number,
  headroom: number,
): ProfileView | undefined {
  const { units, board, faults = [], leastFinal = finalTurnHeight } = options;
  const width = wholePixels(options.maxWidth);
  const room = wholePixels(options.maxHeight);
  const toGo = distanceToGo(plan.track);
  const flown = faults.flatMap((fault) => faultPlaces(plan, fault));
  const farthest = Math.max(toGo[0]!, ...flown.map((place) => place.toGo));
  const short = -plan.touchdown.along;
  const nearest = Math.min(
    short > 0 && short < farthest * 0.4 ? -short : 0,
    ...flown.map((place) => place.toGo),
  );
  const highestFlown = Math.max(
    leastFinal,
    ...plan.track.map((sample) => sample.height),
    ...flown.map(({ height }) => height),
  );
  const barsTo = barsOver * highestFlown;
  const highest = Math.max(highestFlown, ...plan.gates.map((gate) => Math.min(gate.high ?? 0, barsTo)));
  const left = board.measure(formatHeight(highest * 10, units), size.small) + 4;
  const plotWidth = width - left - right;
  const ceiling = highest * 1.08;
  const tallest = room - top - headroom - footHeight(noteLines, mostRows);
  if (tallest < lowestPlot) return undefined;
  // A short, steep approach does not fill the width: heights are never drawn smaller than distances.
  const perMetre = Math.min((plotWidth - lead) / (farthest - nearest), tallest / ceiling);
  const xs = toGo.map((metres) => left + lead + (farthest - metres) * perMetre);
  const phases = phaseRows(plan, board, xs, width);
  const rows = 1 + Math.max(...phases.map((phase) => phase.row));
  const below = footHeight(noteLines, rows);
  const available = room - top - headroom - below + 1e-6;
  const exaggeration = exaggerations.find((times) => ceiling * perMetre * times <= available);
  if (exaggeration === undefined) return undefined;
  const drawnWidth = lead + (farthest - nearest) * perMetre;
  const plotHeight = ceiling * perMetre * exaggeration;
  return {
    plot: { x: left, y: top + headroom, width: drawnWidth, height: plotHeight },
    farthest: farthest + lead / perMetre,
    nearest,
    perMetre,
    exaggeration,
    toGo,
    phases,
    foot: below,
    distanceTicks:
      faults.length > 0
        ? bothWays(units.distance, farthest, nearest, perMetre)
        : ticksIn(units.distance, farthest, drawnWidth / tickPitch.distance),
    heightTicks: ticksIn(units.height, ceiling, plotHeight / tickPitch.height),
    leastFinal,
    barsTo,
  };
}

function ticksIn(unit: 'm' | 'ft', end: number, most: number): number[] {
  const factor = lengthUnitSize(unit);
  return niceTicks(end / factor, Math.max(1, most)).ticks.map((tick) => tick * factor);
}

/** Ticks before the spot, and one past it where there is room for its number. */
function bothWays(unit: 'm' | 'ft', farthest: number, nearest: number, perMetre: number): number[] {
  const before = ticksIn(unit, farthest, (farthest * perMetre) / tickPitch.distance);
  const factor = lengthUnitSize(unit);
  const past = nearest < 0 ? roundBelow(-nearest / factor) * factor : 0;
  return past * perMetre < tickPitch.past ? before : [...before, -past];
}

export function profilePoint(view: ProfileView, toGo: number, height: number): Point {
  const { plot, farthest, perMetre, exaggeration } = view;
  return {
    x: plot.x + (farthest - toGo) * perMetre,
    y: plot.y + plot.height - height * perMetre * exaggeration,
  };
}

/** Distance to go at a time, s, m; the nearest end of the track outside it. */
export function toGoAt(plan: Plan, view: ProfileView, time: number): number {
  const after = plan.track.findIndex((sample) => sample.time >= time);
  if (after === -1) return 0;
  if (after === 0) return view.toGo[0]!;
  const a = plan.track[after - 1]!;
  const b = plan.track[after]!;
  const part = b.time === a.time ? 1 : (time - a.time) / (b.time - a.time);
  return view.toGo[after - 1]! + (view.toGo[after]! - view.toGo[after - 1]!) * part;
}

/** Distance to go from a place on final; final is flown along the centreline. */
export function toGoOnFinal(plan: Plan, along: number): number {
  return plan.touchdown.along - along;
}

/** Obstacles under the final leg, from wings level to the spot. */
export function obstaclesOnFinal(plan: Plan) {
  const final = plan.keys.find((key) => key.id === 'final');
  if (final === undefined) return [];
  const halfWing = plan.aircraft.wing.span / 2;
  return plan.runway.obstacles.filter(
    ({ along, across, width }) =>
      along >= final.along && along <= plan.touchdown.along && Math.abs(across) <= width / 2 + halfWing,
  );
}
