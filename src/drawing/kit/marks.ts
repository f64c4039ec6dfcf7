import type { Container } from '@svgdotjs/svg.js';
import type { MarkedGrade } from '../../words/cautions/grade-words.ts';
import { type Point, type Segment, shifted } from './geometry.ts';
import { ink, paper, weight } from './ink.ts';
import { mm } from './sheet.ts';

/** Symbols of the drawings, each drawn about a point. mm. */
export const markRadius = { key: 1.15, aim: 1.5, spot: 1.7 } as const;

/** A symbol at its place; with a grade, in the square that shows it. */
export interface Mark {
  readonly kind: keyof typeof markRadius;
  readonly at: Point;
  readonly grade?: MarkedGrade | undefined;
}

/** Half a side of the square about a mark, and how heavily it is drawn: the label beside it says what it means. mm. */
const square = { half: 2.1, 'not-to-be-flown': 0.9, 'beyond-good-practice': 0.3 } as const;

/** mm that a mark takes up about its place. */
export function markReach({ kind, grade }: Pick<Mark, 'kind' | 'grade'>): number {
  return grade ? square.half + square[grade] / 2 : markRadius[kind];
}

export function drawMark(into: Container, { kind, at, grade }: Mark): void {
  const draw = { key: drawKey, aim: drawAim, spot: drawSpot };
  draw[kind](into, at);
  if (!grade) return;
  const side = 2 * square.half;
  into.rect(side, side).attr({
    x: mm(at.x - square.half),
    y: mm(at.y - square.half),
    fill: 'none',
    stroke: ink,
    'stroke-width': square[grade],
    'data-grade': grade,
  });
}

/** How a line is drawn. */
export interface Stroke {
  /** mm. */
  readonly width: number;
  /** Ink, where it is not said. */
  readonly colour?: string;
  readonly dashes?: string | undefined;
}

/** A straight line. */
export function drawLine(into: Container, { from, to }: Segment, { width, colour = ink, dashes }: Stroke) {
  const line = into
    .line(mm(from.x), mm(from.y), mm(to.x), mm(to.y))
    .attr({ stroke: colour, 'stroke-width': width, fill: 'none' });
  if (dashes) line.attr({ 'stroke-dasharray': dashes });
  return line;
}

export function drawPolyline(
  into: Container,
  points: readonly Point[],
  { width, colour = ink, dashes }: Stroke,
) {
  const path = into.path(`M${points.map((point) => `${mm(point.x)} ${mm(point.y)}`).join('L')}`).attr({
    stroke: colour,
    'stroke-width': width,
    fill: 'none',
    'stroke-linejoin': 'round',
    'stroke-linecap': 'butt',
  });
  if (dashes) path.attr({ 'stroke-dasharray': dashes });
  return path;
}

/** A filled shape; `outline` mm of ink about it, where there is any. */
export function drawShape(into: Container, points: readonly Point[], fill: string, outline = 0) {
  const shape = into
    .path(`M${points.map((point) => `${mm(point.x)} ${mm(point.y)}`).join('L')}Z`)
    .attr({ fill });
  if (outline > 0) shape.attr({ stroke: ink, 'stroke-width': outline, 'stroke-linejoin': 'round' });
  return shape;
}

/** A key position: an open ring. */
export function drawKey(into: Container, at: Point): void {
  into.circle(2 * 0.95).attr({ cx: mm(at.x), cy: mm(at.y), fill: paper, stroke: ink, 'stroke-width': 0.45 });
}

/** The spot: a filled disc with a cross of paper in it. */
export function drawSpot(into: Container, at: Point): void {
  const radius = 1.55;
  into.circle(2 * radius).attr({ cx: mm(at.x), cy: mm(at.y), fill: ink, stroke: paper, 'stroke-width': 0.3 });
  const arm = 0.95;
  for (const lean of [1, -1]) {
    const from = { x: at.x - arm, y: at.y - arm * lean };
    const to = { x: at.x + arm, y: at.y + arm * lean };
    drawLine(into, { from, to }, { width: 0.4, colour: paper });
  }
}

/** The aim point: an open diamond with a dot. */
export function drawAim(into: Container, at: Point): void {
  const r = 1.45;
  const corners = [
    { x: at.x, y: at.y - r },
    { x: at.x + r, y: at.y },
    { x: at.x, y: at.y + r },
    { x: at.x - r, y: at.y },
  ];
  drawShape(into, corners, paper, 0.4);
  into.circle(0.8).attr({ cx: mm(at.x), cy: mm(at.y), fill: ink });
}

/** mm: from the tip of an arrowhead to its back, and half its width there. */
export interface ArrowheadSize {
  readonly length: number;
  readonly spread: number;
}

/** A filled arrowhead with its tip at `tip`; `direction` is a unit vector. */
export function drawArrowhead(
  into: Container,
  tip: Point,
  direction: Point,
  { length, spread }: ArrowheadSize,
): void {
  const back = shifted(tip, direction, -length);
  const side = { x: -direction.y, y: direction.x };
  drawShape(
    into,
    [tip, shifted(back, side, spread), shifted(tip, direction, -length * 0.75), shifted(back, side, -spread)],
    ink,
  );
}

/** A dimension line: thin, with a slanted stroke at each end. */
export function drawDimension(into: Container, line: Segment, direction: Point): void {
  drawLine(into, line, { width: weight.hair });
  for (const end of dimensionEnds(line, direction)) drawLine(into, end, { width: 0.4 });
}

/** The strokes at the ends of a dimension line; `direction` is its unit vector. */
export function dimensionEnds({ from, to }: Segment, direction: Point): Segment[] {
  const slant = {
    x: (direction.x - direction.y) * Math.SQRT1_2,
    y: (direction.x + direction.y) * Math.SQRT1_2,
  };
  return [from, to].map((end) => ({ from: shifted(end, slant, -1), to: shifted(end, slant, 1) }));
}
