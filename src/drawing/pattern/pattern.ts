import type { Plan } from '../../flight/terms/plan.ts';
import type { Drawing } from '../kit/drawing.ts';
import { roundScales } from '../kit/scale.ts';
import { closeSheet, mmPerPixel, openSheet, wholePixels } from '../kit/sheet.ts';
import type { FaultDrawingOptions } from '../shared/drawn-fault.ts';
import { drawMap } from './pattern-draw.ts';
import { drawLegend, legendHeight, patternLegend } from './pattern-legend.ts';
import { layOutMap, type MapLayout } from './pattern-map.ts';
import { extent, groundShown, type Landing, type PatternView, runwayIsLong } from './pattern-view.ts';
import { patternDescription, patternTitle } from './pattern-words.ts';

/** Room: at least 85 by 70 mm. */
export type PatternOptions = FaultDrawingOptions;

export interface PatternDrawing extends Drawing {
  /** 1:`scale` on paper printed at full size. */
  readonly scale: number;
}

/** mm of free paper around the drawn ground. */
const margin = { x: 6, y: 5.5 };
/** How many round scales are tried so that every label finds a free place. */
const scalesTried = 3;

/**
 * The approach seen from above, at the largest round scale that fits and leaves every label a free place. The landing
 * runs up the page, or to the right where only that allows a larger scale; a long runway is broken off past the landing.
 * @throws RangeError where the plan has no track or the room is too small for any drawing.
 */
export function patternDrawing(plan: Plan, options: PatternOptions): PatternDrawing {
  const { board, id, units, faults = [] } = options;
  if (plan.track.length < 2) throw new RangeError('A plan without a flown track cannot be drawn');
  const width = wholePixels(options.maxWidth);
  const words = patternLegend(plan, units, faults.length > 0);
  const strip = legendHeight(board, plan, words, width);
  const room = { width, height: wholePixels(options.maxHeight) - strip };
  const { layout, mapHeight } = bestLayout(plan, options, room);
  const height = Math.ceil((mapHeight + strip) / mmPerPixel - 1e-6) * mmPerPixel;
  const sheet = openSheet(board, id, width, height);
  drawMap(sheet, plan, layout);
  drawLegend(sheet, plan, layout.view, words);
  const { scale } = layout.view;
  const drawing = closeSheet(
    sheet,
    patternTitle(plan, scale),
    patternDescription(plan, units, scale, faults),
  );
  return { ...drawing, scale };
}

function bestLayout(plan: Plan, options: PatternOptions, room: { width: number; height: number }) {
  const { faults = [] } = options;
  const grounds = (runwayIsLong(plan, faults) ? [true, false] : [true]).map((wholeRunway) => ({
    wholeRunway,
    shown: groundShown(plan, wholeRunway, faults),
  }));
  let best: { layout: MapLayout; mapHeight: number } | undefined;
  let tried = 0;
  for (const scale of roundScales()) {
    if (tried === scalesTried && best) return best;
    let fitted = false;
    for (const { view, mapHeight } of fittingViews(grounds, scale, room)) {
      fitted = true;
      const frame = { x: 0, y: 0, width: room.width, height: mapHeight };
      const layout = layOutMap(plan, options, view, frame);
      if (layout.hidden === 0) return { layout, mapHeight };
      if (best === undefined || layout.hidden < best.layout.hidden) best = { layout, mapHeight };
    }
    if (fitted) tried += 1;
  }
  throw new RangeError(
    `There is no room for a pattern drawing in ${Math.round(room.width)} mm by ${Math.round(room.height)} mm`,
  );
}

/** The ground to be shown, with the whole of a long runway and without. */
type Grounds = readonly { readonly wholeRunway: boolean; readonly shown: ReturnType<typeof groundShown> }[];

function* fittingViews(grounds: Grounds, scale: number, room: { width: number; height: number }) {
  for (const { wholeRunway, shown } of grounds) {
    for (const landing of ['up', 'right'] satisfies Landing[]) {
      const box = extent({ landing, scale, wholeRunway }, shown);
      const mapHeight = box.height + 2 * margin.y;
      if (box.width + 2 * margin.x > room.width || mapHeight > room.height) continue;
      const spot = { x: (room.width - box.width) / 2 - box.x, y: margin.y - box.y };
      const view: PatternView = { landing, scale, wholeRunway, spot };
      yield { view, mapHeight };
    }
  }
}
