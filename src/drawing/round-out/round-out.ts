import type { Plan } from '../../flight/terms/plan.ts';
import { formatDistance, formatLowHeight } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Drawing } from '../kit/drawing.ts';
import { dash, face, size, weight } from '../kit/ink.ts';
import { drawAim, drawKey, drawLine, drawPolyline, drawSpot } from '../kit/marks.ts';
import { closeSheet, layer, mmPerPixel, openSheet, type Sheet, wholePixels } from '../kit/sheet.ts';
import { setLine, wrapped } from '../kit/text.ts';
import { drawLabel } from '../labels/labels.ts';
import { type DrawnFault, drawFaults, type FaultDrawingOptions } from '../shared/drawn-fault.ts';
import { type DrawnLanding, type LandingFault, landingFault } from './round-out-faults.ts';
import { type LandingEnd, landingEnd } from './round-out-flight.ts';
import { layOutRoundOut, type RoundOutLayout, roundOutPoint, roundOutView } from './round-out-layout.ts';
import { roundOutDescription, roundOutNote, roundOutTitle } from './round-out-words.ts';

/** Room: at least 110 by 60 mm. */
export type RoundOutOptions = FaultDrawingOptions;

export interface RoundOutDrawing extends Drawing {
  /** Heights are drawn this many times as large as distances. */
  readonly exaggeration: number;
}

/** Under the ground line, mm: the distances, the bars of the stretches and their names. */
const foot = { numbers: 5.6, bar: 2.4, names: 3.6 };
/** mm above the plot, tried in turn until every label has a free place. */
const headrooms = [4, 10, 16, 22];
/** With the labels of faults: each layout costs more, and more of them fail. */
const taller = [4, 13, 22, 31, 40];

/**
 * The round-out and hold-off as the plan flies them, with the last of final: height of the wheels against distance
 * along the runway, heights a whole number of times as large as distances.
 * @throws RangeError where the plan has no round-out, a fault has no part in the drawing (`landingFault`), or there
 * is no room.
 */
export function roundOutDrawing(plan: Plan, options: RoundOutOptions): RoundOutDrawing {
  const { board, id, units } = options;
  const end = landingEnd(plan);
  if (!end) throw new RangeError('A plan without a round-out has none to draw');
  const width = wholePixels(options.maxWidth);
  const faults = (options.faults ?? []).map((fault) => inLanding(end, fault));
  const landing = { plan, end, faults };
  const noteOf = (times: number) => wrapped(board, roundOutNote(landing, times), width - 4, size.note);
  const below = foot.numbers + foot.bar + foot.names + noteOf(10).length * size.note * face.leading + 3;
  const layout = bestLayout(landing, options, below);
  const { plot, exaggeration } = layout.view;
  const height = Math.ceil((plot.y + plot.height + below) / mmPerPixel - 1e-6) * mmPerPixel;
  const sheet = openSheet(board, id, width, height);
  drawAxes(sheet, units, layout);
  drawStretches(sheet, layout);
  drawScene(sheet, layout);
  const note = layer(sheet, 'note');
  const lines = noteOf(exaggeration);
  for (const [index, text] of lines.entries()) {
    const y = height - 1.2 - (lines.length - 1 - index) * size.note * face.leading;
    setLine(note, { text }, { x: 2, y }, { size: size.note });
  }
  const description = roundOutDescription(landing, units, exaggeration);
  return { ...closeSheet(sheet, roundOutTitle(plan), description), exaggeration };
}

function inLanding(end: LandingEnd, fault: DrawnFault): LandingFault {
  const part = landingFault(end, fault);
  if (typeof part === 'string') throw new RangeError(`${fault.name} has no part in the drawing: ${part}`);
  return part;
}

function bestLayout(landing: DrawnLanding, options: RoundOutOptions, below: number): RoundOutLayout {
  const { maxHeight } = options;
  const width = wholePixels(options.maxWidth);
  let best: RoundOutLayout | undefined;
  for (const headroom of landing.faults.length > 0 ? taller : headrooms) {
    const tallest = maxHeight - below - headroom;
    const view = roundOutView(landing, options, tallest, headroom);
    if (view === undefined) break;
    const layout = layOutRoundOut(landing, options, view);
    if (layout.hidden === 0) return layout;
    if (best === undefined || layout.hidden < best.hidden) best = layout;
  }
  if (best) return best;
  throw new RangeError(
    `There is no room for a round-out in ${Math.round(width)} mm by ${Math.round(maxHeight)} mm`,
  );
}

function drawAxes(sheet: Sheet, units: PageUnits, { view }: RoundOutLayout): void {
  const axes = layer(sheet, 'axes');
  const { plot } = view;
  const ground = plot.y + plot.height;
  drawLine(
    axes,
    { from: { x: plot.x, y: plot.y - 2 }, to: { x: plot.x, y: ground } },
    { width: weight.line },
  );
  const floor = { from: { x: plot.x, y: ground }, to: { x: plot.x + plot.width, y: ground } };
  drawLine(axes, floor, { width: weight.straight });
  for (const height of view.heightTicks) {
    const { y } = roundOutPoint(view, 0, height);
    drawLine(axes, { from: { x: plot.x - 1.2, y }, to: { x: plot.x, y } }, { width: weight.line });
    const at = { x: plot.x - 1.8, y: y + (size.small * face.cap) / 2 };
    setLine(axes, { text: formatLowHeight(height, units) }, at, { align: 'end', size: size.small });
  }
  let free = Number.NEGATIVE_INFINITY;
  for (const distance of [...view.distanceTicks].sort((a, b) => b - a)) {
    const { x } = roundOutPoint(view, -distance, 0);
    if (x < plot.x || x > plot.x + plot.width + 0.1) continue;
    drawLine(axes, { from: { x, y: ground }, to: { x, y: ground + 1.2 } }, { width: weight.line });
    const at = { x, y: ground + 2 + size.small * face.cap };
    const past = distance < 0 ? ' past' : '';
    const text = distance === 0 ? 'spot' : `${formatDistance(Math.abs(distance), units)}${past}`;
    const half = sheet.board.measure(text, size.small) / 2;
    // A tick whose number would be too near to the one before has none.
    if (x - half < free) continue;
    free = x + half + 1;
    setLine(axes, { text }, at, { align: 'middle', size: size.small });
  }
}

/** Bars with the names of the stretches, and the ground that each covers. */
function drawStretches(sheet: Sheet, { view, stretches }: RoundOutLayout): void {
  const group = layer(sheet, 'stretches');
  const top = view.plot.y + view.plot.height + foot.numbers + 0.9;
  const baseline = top + foot.bar + size.small * face.cap - 0.6;
  let free = 0;
  for (const { text, from, to } of stretches) {
    const bar = { from: { x: from + 0.25, y: top }, to: { x: to - 0.25, y: top } };
    drawLine(group, bar, { width: 0.5 });
    // A name wider than its bar moves to the right of the one before.
    const half = sheet.board.measure(text, size.small) / 2;
    const x = Math.max((from + to) / 2, free + half + 1.5);
    setLine(group, { text }, { x, y: baseline }, { align: 'middle', size: size.small });
    free = x + half;
  }
}

function drawScene(sheet: Sheet, layout: RoundOutLayout): void {
  const faulty = layout.faults.length > 0;
  if (faulty) drawFaults(layer(sheet, 'faults'), layout.faults);
  const track = layer(sheet, 'track');
  if (layout.sight)
    drawLine(track, layout.sight, { width: weight.line, dashes: faulty ? dash.sight : dash.limit });
  drawPolyline(track, layout.final, { width: weight.straight });
  drawPolyline(track, layout.roundOut, { width: weight.turn });
  drawPolyline(track, layout.holdOff, { width: weight.straight });
  const marks = layer(sheet, 'marks');
  const draw = { key: drawKey, aim: drawAim, spot: drawSpot };
  for (const mark of layout.marks) draw[mark.kind](marks, mark.at);
  const labels = layer(sheet, 'labels');
  for (const label of layout.labels) drawLabel(labels, label);
}
