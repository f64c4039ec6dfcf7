import type { Drawing, DrawingOptions } from '../kit/drawing.ts';
import { unit } from '../kit/geometry.ts';
import { dash, ink, paper, tint, weight } from '../kit/ink.ts';
import { drawArrowhead, drawDimension, drawKey, drawLine, drawShape, drawSpot } from '../kit/marks.ts';
import { roundScales } from '../kit/scale.ts';
import { closeSheet, layer, mm, mmPerPixel, openSheet, type Sheet, wholePixels } from '../kit/sheet.ts';
import { drawLabel } from '../labels/labels.ts';
import { drawLegend, legendHeight } from '../pattern/pattern-legend.ts';
import type { Landing, PatternView } from '../pattern/pattern-view.ts';
import { layOutReach, type ReachLayout, reachExtent } from './reach-layout.ts';
import type { ReachScene } from './reach-scene.ts';
import { reachDescription, reachLegend, reachTitle } from './reach-words.ts';

/** Room: at least 85 by 70 mm. */
export type ReachOptions = DrawingOptions;

export interface ReachDrawing extends Drawing {
  /** 1:`scale` on paper printed at full size. */
  readonly scale: number;
}

/** mm of free paper around the outline. */
const margin = { x: 7, y: 6 };
/** How many round scales are tried so that every label finds a free place. */
const scalesTried = 3;

/**
 * The ground that the glide reaches, seen from above, at the largest round scale that fits and leaves every label a
 * free place.
 * @throws RangeError where the outline is not a ring, or the room is too small for any drawing.
 */
export function reachDrawing(scene: ReachScene, options: ReachOptions): ReachDrawing {
  const { board, id, units } = options;
  if (scene.outline.length < 4) throw new RangeError('An outline of fewer than three points cannot be drawn');
  const width = wholePixels(options.maxWidth);
  const words = reachLegend(scene, units);
  const strip = legendHeight(board, scene.plan, words, width);
  const room = { width, height: wholePixels(options.maxHeight) - strip };
  const { layout, mapHeight } = bestLayout(scene, options, room);
  const height = Math.ceil((mapHeight + strip) / mmPerPixel - 1e-6) * mmPerPixel;
  const sheet = openSheet(board, id, width, height);
  drawReach(sheet, layout);
  drawLegend(sheet, scene.plan, layout.view, words);
  const { scale } = layout.view;
  const drawing = closeSheet(sheet, reachTitle(scene, scale), reachDescription(scene, units, scale));
  return { ...drawing, scale };
}

function bestLayout(scene: ReachScene, options: ReachOptions, room: Room) {
  let best: { layout: ReachLayout; mapHeight: number } | undefined;
  let tried = 0;
  for (const scale of roundScales()) {
    if (tried === scalesTried && best) break;
    let fitted = false;
    for (const { view, mapHeight } of fittingViews(scene, scale, room)) {
      fitted = true;
      const frame = { x: 0, y: 0, width: room.width, height: mapHeight };
      const layout = layOutReach(scene, options, view, frame);
      if (layout.hidden === 0) return { layout, mapHeight };
      if (best === undefined || layout.hidden < best.layout.hidden) best = { layout, mapHeight };
    }
    if (fitted) tried += 1;
  }
  if (best) return best;
  throw new RangeError(
    `There is no room for the ground within reach in ${Math.round(room.width)} mm by ${Math.round(room.height)} mm`,
  );
}

interface Room {
  readonly width: number;
  readonly height: number;
}

function* fittingViews(scene: ReachScene, scale: number, room: Room) {
  for (const landing of ['up', 'right'] satisfies Landing[]) {
    const origin: PatternView = { landing, scale, wholeRunway: true, spot: { x: 0, y: 0 } };
    const box = reachExtent(scene, origin);
    const mapHeight = box.height + 2 * margin.y;
    if (box.width + 2 * margin.x > room.width || mapHeight > room.height) continue;
    const spot = { x: (room.width - box.width) / 2 - box.x, y: margin.y - box.y };
    yield { view: { ...origin, spot }, mapHeight };
  }
}

function drawReach(sheet: Sheet, layout: ReachLayout): void {
  const { runway, outline, onward } = layout;
  const within = layer(sheet, 'within');
  drawShape(within, outline, tint);
  const ground = layer(sheet, 'ground');
  drawShape(ground, outline, 'none', weight.straight);
  for (const corners of layout.fields) drawShape(ground, corners, paper, weight.outline);
  ground.rect(runway.width, runway.height).attr({
    x: mm(runway.x),
    y: mm(runway.y),
    fill: paper,
    stroke: ink,
    'stroke-width': weight.outline,
  });
  const figures = layer(sheet, 'dimensions');
  for (const { line, direction } of layout.distances) drawDimension(figures, line, direction);
  const marks = layer(sheet, 'marks');
  drawLine(marks, onward, { width: weight.outline, dashes: dash.sight });
  drawArrowhead(marks, onward.to, unit(onward.from, onward.to), { length: 2.6, spread: 1.1 });
  drawKey(marks, layout.start);
  drawSpot(marks, layout.view.spot);
  const labels = layer(sheet, 'labels');
  for (const label of layout.labels) drawLabel(labels, label);
}
