import type { Plan } from '../flight/plan.ts';
import { metresPerFoot } from '../units/factors.ts';
import { formatAngle, formatHeight, formatWind } from '../units/format.ts';
import type { PageUnits } from '../units/page-units.ts';
import { numberText } from '../units/rounding.ts';
import type { DrawingBoard } from './drawing.ts';
import { type Point, shifted } from './geometry.ts';
import { face, faint, ink, size, weight } from './ink.ts';
import { drawArrowhead, drawLine } from './marks.ts';
import { onPage, type PatternView, pageDirection } from './pattern-view.ts';
import { roundBelow } from './scale.ts';
import { layer, mm, type Sheet } from './sheet.ts';
import { setLine, wrapped } from './text.ts';
import { windAloft } from './wind-aloft.ts';

/** mm: the strip's parts, left to right and top to bottom. */
const inset = 3;
const dialRadius = 4.6;
const rowHeight = 15.5;
/** From the left edge: north, the wind's arrow, and its figures. */
const northAt = inset + dialRadius;
const windArrowAt = northAt + 2 * dialRadius + 3.5;
const windTextAt = windArrowAt + dialRadius + 2.6;
const noteLeading = size.small * face.leading;
/** The scale bar is not longer than this. */
const longestBar = 42;
const scaleBlock = longestBar + 12;

/** The wind in words: at the surface, and at pattern height where it differs. */
export function windLines(plan: Plan, units: PageUnits): string[] {
  const { from, speed } = plan.flown.surfaceWind;
  const surface = formatWind(from, speed, units);
  const aloft = windAloft(plan.wind, patternHeight(plan));
  const above = aloft ? formatWind(aloft.from, aloft.speed, units) : surface;
  if (aloft === undefined || above === surface) return [`Wind ${surface}`];
  return [`Wind ${surface}`, `at ${formatHeight(aloft.height, units)}: ${above}`];
}

/** At the downwind key; of an approach without one, where it starts. m. */
function patternHeight(plan: Plan): number {
  const key = plan.keys.find((position) => position.id === 'downwind-key');
  return key?.height ?? plan.track[0]?.height ?? 0;
}

/** The scale in figures, as it is printed. */
export function scaleText(scale: number): string {
  return `1:${numberText(scale, 1)}`;
}

const note = 'Heavy line: turning. A stroke across the track every 10 s from the start.';

/** Height of the strip in mm for a drawing of this width. */
export function legendHeight(board: DrawingBoard, plan: Plan, units: PageUnits, width: number): number {
  const rows = sideBySide(board, plan, units, width) ? 1 : 2;
  return inset + rows * rowHeight + noteLines(board, width).length * noteLeading + 1;
}

/** Whether the scale stands beside the wind, or has a row of its own. */
function sideBySide(board: DrawingBoard, plan: Plan, units: PageUnits, width: number): boolean {
  const widest = Math.max(
    ...windLines(plan, units).map((line) => board.measure(line, size.label, 'bold')),
    board.measure(northText(plan), size.small),
  );
  return windTextAt + widest + 4 + scaleBlock + inset <= width;
}

/** What stands beside the dials. */
function dialLines(plan: Plan, units: PageUnits): string[] {
  return [...windLines(plan, units), northText(plan)];
}

function noteLines(board: DrawingBoard, width: number): string[] {
  return wrapped(board, note, width - 2 * inset, size.small);
}

/** North, wind, scale and the key to the lines, in a strip under the pattern that begins at `top` mm. */
export function drawLegend(sheet: Sheet, plan: Plan, units: PageUnits, view: PatternView, top: number): void {
  const strip = layer(sheet, 'legend');
  drawLine(strip, { from: { x: 0, y: top }, to: { x: sheet.width, y: top } }, weight.hair, faint);
  const middle = top + inset + dialRadius + 1.4;
  drawNorth(strip, plan, view, { x: northAt, y: middle });
  drawWind(strip, plan, units, view, { x: windArrowAt, y: middle });
  const beside = sideBySide(sheet.board, plan, units, sheet.width);
  const bar = {
    x: beside ? sheet.width - inset - scaleBlock : inset,
    y: top + inset + (beside ? 0 : rowHeight),
  };
  drawScale(sheet, view, bar);
  const notes = noteLines(sheet.board, sheet.width);
  const first = top + inset + rowHeight * (beside ? 1 : 2) + size.small * face.cap;
  for (const [index, text] of notes.entries()) {
    setLine(strip, { text }, { x: inset, y: first + index * noteLeading }, 'start', size.small, faint);
  }
}

function drawNorth(strip: ReturnType<typeof layer>, plan: Plan, view: PatternView, centre: Point): void {
  const north = pageDirection(view, plan, 0);
  strip
    .circle(2 * dialRadius)
    .attr({ cx: mm(centre.x), cy: mm(centre.y), fill: 'none', stroke: faint, 'stroke-width': weight.hair });
  const tip = shifted(centre, north, dialRadius);
  drawLine(strip, { from: shifted(centre, north, -dialRadius), to: shifted(centre, north, -1.9) }, 0.4);
  drawLine(strip, { from: shifted(centre, north, 1.9), to: shifted(tip, north, -1) }, 0.4);
  drawArrowhead(strip, tip, north, 2.2, 1);
  const letter = { x: centre.x, y: centre.y + (size.label * face.cap) / 2 };
  setLine(strip, { text: 'N', bold: true }, letter, 'middle');
}

function drawWind(
  strip: ReturnType<typeof layer>,
  plan: Plan,
  units: PageUnits,
  view: PatternView,
  at: Point,
): void {
  const { from, speed } = plan.flown.surfaceWind;
  const lines = dialLines(plan, units);
  const calm = formatWind(from, speed, units) === 'calm';
  if (!calm) {
    const blowing = pageDirection(view, plan, from + Math.PI);
    const tip = shifted(at, blowing, dialRadius);
    drawLine(strip, { from: shifted(at, blowing, -dialRadius), to: shifted(tip, blowing, -1.8) }, 0.8);
    drawArrowhead(strip, tip, blowing, 3.6, 1.6);
  }
  const x = calm ? at.x - dialRadius : windTextAt;
  const leading = size.label * 1.3;
  const y = at.y - (leading * (lines.length - 1)) / 2 + size.label * 0.35;
  for (const [index, text] of lines.entries()) {
    const last = index === lines.length - 1;
    setLine(
      strip,
      { text, bold: index === 0 },
      { x, y: y + index * leading },
      'start',
      last ? size.small : size.label,
    );
  }
}

function northText(plan: Plan): string {
  const { variation } = plan.airfield;
  if (variation === undefined) return 'N: true north';
  return `N: true north, variation ${formatAngle(Math.abs(variation))} ${variation < 0 ? 'W' : 'E'}`;
}

/**
 * Metres above, feet below. The upper line is the one to hold a ruler to: `class="scale-bar"`, with its length on the
 * ground and on the paper in `data-` attributes.
 */
function drawScale(sheet: Sheet, view: PatternView, at: Point): void {
  const group = layer(sheet, 'scale');
  const x = at.x;
  const y = at.y + size.small * face.cap + 2.2;
  const metres = roundBelow((longestBar * view.scale) / 1000);
  const feet = roundBelow((longestBar * view.scale) / 1000 / metresPerFoot);
  const length = onPage(view, metres);
  const bar = group.line(mm(x), mm(y), mm(x + length), mm(y)).attr({
    id: `${sheet.id}-scale-bar`,
    class: 'scale-bar',
    'data-length-m': metres,
    'data-length-mm': mm(length),
    stroke: ink,
    'stroke-width': 0.4,
  });
  bar.attr({ fill: 'none' });
  const below = y + 1.1;
  const feetLength = onPage(view, feet * metresPerFoot);
  drawLine(group, { from: { x, y: below }, to: { x: x + feetLength, y: below } }, 0.4);
  drawDivisions(group, { x, y }, metres, length, 'm', -1);
  drawDivisions(group, { x, y: below }, feet, feetLength, 'ft', 1);
  const baseline = below + 1.6 + size.small * face.cap + 1.8 + size.label * face.cap;
  setLine(group, { text: `Scale ${scaleText(view.scale)}`, bold: true }, { x, y: baseline });
  const width = sheet.board.measure(`Scale ${scaleText(view.scale)}`, size.label, 'bold');
  setLine(group, { text: 'printed at full size' }, { x: x + width + 1.2, y: baseline });
}

function drawDivisions(
  group: ReturnType<typeof layer>,
  start: Point,
  total: number,
  length: number,
  unit: 'm' | 'ft',
  away: 1 | -1,
): void {
  const parts = /^5/.test(String(total)) ? 5 : /^2/.test(String(total)) ? 4 : 2;
  for (let index = 0; index <= parts; index += 1) {
    const x = start.x + (length * index) / parts;
    const reach = index === 0 || index === parts ? 1.5 : 0.9;
    drawLine(group, { from: { x, y: start.y }, to: { x, y: start.y + away * reach } }, weight.line);
  }
  const baseline = away < 0 ? start.y - 2.1 : start.y + 2.1 + size.small * face.cap;
  setLine(group, { text: '0' }, { x: start.x, y: baseline }, 'middle', size.small);
  const text = numberText(total, 1);
  setLine(group, { text }, { x: start.x + length, y: baseline }, 'middle', size.small);
  const half = numberText(total / 2, 1);
  if (parts !== 5)
    setLine(group, { text: half }, { x: start.x + length / 2, y: baseline }, 'middle', size.small);
  setLine(group, { text: unit }, { x: start.x + length + 4, y: baseline }, 'start', size.small);
}
