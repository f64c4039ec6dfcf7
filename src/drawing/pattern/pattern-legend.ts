import { flownWindAt } from '../../flight/air/flown-wind.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { markNote } from '../../words/cautions/grade-words.ts';
import { formatHeight, formatWind } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { DrawingBoard } from '../kit/drawing.ts';
import { type Point, shifted } from '../kit/geometry.ts';
import { face, faint, size, weight } from '../kit/ink.ts';
import { drawArrowhead, drawLine } from '../kit/marks.ts';
import { drawScaleBar, scaleBlock } from '../kit/scale-bar.ts';
import { layer, mm, type Sheet } from '../kit/sheet.ts';
import { setLine, wrapped } from '../kit/text.ts';
import { type PatternView, pageDirection } from './pattern-view.ts';

/** mm: the parts of the strip, left to right and top to bottom. */
const inset = 3;
const dialRadius = 4.6;
const rowHeight = 15.5;
/** From the left edge: north, the wind's arrow, and its figures. */
const northAt = inset + dialRadius;
const windArrowAt = northAt + 2 * dialRadius + 3.5;
const windTextAt = windArrowAt + dialRadius + 2.6;
const noteLeading = size.note * face.leading;

/** The wind in words: at the surface, and at pattern height where it differs. */
export function windLines(plan: Plan, units: PageUnits): string[] {
  const { from, speed } = plan.flown.surfaceWind;
  const surface = formatWind(from, speed, units);
  const aloft = flownWindAt(plan, patternHeight(plan));
  const above = formatWind(aloft.from, aloft.speed, units);
  if (above === surface) return [`Wind ${surface}`];
  return [`Wind ${surface}`, `at ${formatHeight(aloft.height, units)}: ${above}`];
}

/** At the downwind key; for an approach without one, where it starts. m. */
function patternHeight(plan: Plan): number {
  const key = plan.keys.find((position) => position.id === 'downwind-key');
  return key?.height ?? plan.track[0]?.height ?? 0;
}

/** What the strip says: the lines beside the wind's arrow, and the key to the lines that are drawn. */
export interface LegendWords {
  readonly wind: readonly string[];
  /** Without an arrow for the wind. */
  readonly calm: boolean;
  readonly note: string;
}

export function patternLegend(plan: Plan, units: PageUnits, faulty: boolean): LegendWords {
  const { from, speed } = plan.flown.surfaceWind;
  const dashed = faulty ? ' Dashed: a fault flown, with a cross where it ends.' : '';
  const note = `Heavy line: turning. A stroke across the track every 10 s from the start.${markNote(plan)}${dashed}`;
  return { wind: windLines(plan, units), calm: formatWind(from, speed, units) === 'calm', note };
}

/** Height of the strip in mm for a drawing of this width. */
export function legendHeight(board: DrawingBoard, plan: Plan, words: LegendWords, width: number): number {
  const rows = sideBySide(board, plan, words, width) ? 1 : 2;
  return inset + rows * rowHeight + noteLines(board, words, width).length * noteLeading + 1;
}

/** Whether the scale is beside the wind, or has a row of its own. */
function sideBySide(board: DrawingBoard, plan: Plan, words: LegendWords, width: number): boolean {
  const widest = Math.max(
    ...words.wind.map((line) => board.measure(line, size.label, 'bold')),
    board.measure(northText(plan), size.small),
  );
  return windTextAt + widest + 4 + scaleBlock + inset <= width;
}

function noteLines(board: DrawingBoard, { note }: LegendWords, width: number): string[] {
  return wrapped(board, note, width - 2 * inset, size.note);
}

/** North, wind, scale and the key to the lines, in a strip at the foot of the sheet. */
export function drawLegend(sheet: Sheet, plan: Plan, view: PatternView, words: LegendWords): void {
  const strip = layer(sheet, 'legend');
  const top = sheet.height - legendHeight(sheet.board, plan, words, sheet.width);
  drawLine(
    strip,
    { from: { x: 0, y: top }, to: { x: sheet.width, y: top } },
    { width: weight.hair, colour: faint },
  );
  const middle = top + inset + dialRadius + 1.4;
  drawNorth(strip, plan, view, { x: northAt, y: middle });
  const blowing = words.calm ? undefined : pageDirection(view, plan, plan.flown.surfaceWind.from + Math.PI);
  drawWind(strip, [...words.wind, northText(plan)], { x: windArrowAt, y: middle }, blowing);
  const beside = sideBySide(sheet.board, plan, words, sheet.width);
  const bar = {
    x: beside ? sheet.width - inset - scaleBlock : inset,
    y: top + inset + (beside ? 0 : rowHeight),
  };
  drawScaleBar(sheet, view.scale, bar);
  const notes = noteLines(sheet.board, words, sheet.width);
  const first = top + inset + rowHeight * (beside ? 1 : 2) + size.note * face.cap;
  for (const [index, text] of notes.entries()) {
    setLine(strip, { text }, { x: inset, y: first + index * noteLeading }, { size: size.note });
  }
}

function drawNorth(strip: ReturnType<typeof layer>, plan: Plan, view: PatternView, centre: Point): void {
  const north = pageDirection(view, plan, 0);
  strip
    .circle(2 * dialRadius)
    .attr({ cx: mm(centre.x), cy: mm(centre.y), fill: 'none', stroke: faint, 'stroke-width': weight.hair });
  const tip = shifted(centre, north, dialRadius);
  drawLine(
    strip,
    { from: shifted(centre, north, -dialRadius), to: shifted(centre, north, -1.9) },
    { width: 0.4 },
  );
  drawLine(strip, { from: shifted(centre, north, 1.9), to: shifted(tip, north, -1) }, { width: 0.4 });
  drawArrowhead(strip, tip, north, { length: 2.2, spread: 1 });
  const letter = { x: centre.x, y: centre.y + (size.label * face.cap) / 2 };
  setLine(strip, { text: 'N', bold: true }, letter, { align: 'middle' });
}

/** The lines beside the wind's arrow about `at`; `blowing` is its unit vector, undefined in a calm. */
function drawWind(
  strip: ReturnType<typeof layer>,
  lines: readonly string[],
  at: Point,
  blowing: Point | undefined,
): void {
  if (blowing) {
    const tip = shifted(at, blowing, dialRadius);
    drawLine(
      strip,
      { from: shifted(at, blowing, -dialRadius), to: shifted(tip, blowing, -1.8) },
      { width: 0.8 },
    );
    drawArrowhead(strip, tip, blowing, { length: 3.6, spread: 1.6 });
  }
  const x = blowing ? windTextAt : at.x - dialRadius;
  const leading = size.label * 1.3;
  const y = at.y - (leading * (lines.length - 1)) / 2 + size.label * 0.35;
  for (const [index, text] of lines.entries()) {
    const last = index === lines.length - 1;
    setLine(
      strip,
      { text, bold: index === 0 },
      { x, y: y + index * leading },
      { size: last ? size.small : size.label },
    );
  }
}

function northText(plan: Plan): string {
  const { variation } = plan.airfield;
  if (variation === undefined) return 'N: true north';
  return `N: true north, variation ${formatAngle(Math.abs(variation))} ${variation < 0 ? 'W' : 'E'}`;
}
