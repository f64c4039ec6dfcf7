import type { Plan } from '../../flight/terms/plan.ts';
import { type Box, type Point, simplified } from '../kit/geometry.ts';
import { dash, faint, ink, paper, tint, weight } from '../kit/ink.ts';
import { drawArrowhead, drawDimension, drawLine, drawMark, drawPolyline, drawShape } from '../kit/marks.ts';
import { layer, type Sheet } from '../kit/sheet.ts';
import { drawLabel } from '../labels/labels.ts';
import { drawFaults } from '../shared/drawn-fault.ts';
import { stretches } from '../shared/track-line.ts';
import type { MapLayout } from './pattern-map.ts';
import { tickSegment } from './pattern-marks.ts';
import { type Ground, type PatternView, pagePoint } from './pattern-view.ts';

/** Draws what `layOutMap` has placed. */
export function drawMap(sheet: Sheet, plan: Plan, layout: MapLayout): void {
  const { view, runway, centreline } = layout;
  const at = (place: Ground) => pagePoint(view, place);
  const ground = layer(sheet, 'ground');
  ground
    .rect(runway.width, runway.height)
    .attr({ x: runway.x, y: runway.y, fill: tint, stroke: ink, 'stroke-width': weight.outline });
  if (layout.broken) drawBreak(ground, view, runway);
  drawLine(ground, centreline, { width: weight.line, colour: faint, dashes: dash.centreline });
  for (const box of layout.obstacles) {
    ground
      .rect(box.width, box.height)
      .attr({ x: box.x, y: box.y, fill: faint, stroke: ink, 'stroke-width': weight.line });
  }
  const figures = layer(sheet, 'dimensions');
  for (const { line, direction, extensions } of layout.dimensions) {
    drawDimension(figures, line, direction);
    for (const extension of extensions)
      drawLine(figures, extension, { width: weight.hair, dashes: dash.sight });
  }
  drawFaults(layer(sheet, 'faults'), layout.faults);
  const track = layer(sheet, 'track');
  for (const { turning, points } of stretches(plan.track, at)) {
    drawPolyline(track, simplified(points, 0.015), { width: turning ? weight.turn : weight.straight });
  }
  for (const tick of layout.ticks)
    drawLine(track, tickSegment(tick), { width: tick.numbered ? 0.4 : weight.line });
  for (const arrow of layout.arrows)
    drawArrowhead(track, arrow.at, arrow.direction, { length: 2.6, spread: 1.15 });
  const marks = layer(sheet, 'marks');
  for (const mark of layout.marks) drawMark(marks, mark);
  const labels = layer(sheet, 'labels');
  for (const label of layout.labels) drawLabel(labels, label);
}

/** A break line across the end of a runway that goes on. */
function drawBreak(into: ReturnType<typeof layer>, view: PatternView, runway: Box): void {
  const end = (across: number, forward: number): Point =>
    view.landing === 'up'
      ? { x: runway.x + runway.width * across, y: runway.y - forward }
      : { x: runway.x + runway.width + forward, y: runway.y + runway.height * across };
  const edge = [end(-0.1, 0), end(0.35, 0), end(0.45, 1.1), end(0.55, -1.1), end(0.65, 0), end(1.1, 0)];
  drawShape(into, [end(-0.2, 1.4), ...edge, end(1.2, 1.4)], paper);
  drawPolyline(into, edge, { width: weight.outline });
}
