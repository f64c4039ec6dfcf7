import type { Plan } from '../../flight/terms/plan.ts';
import { formatAngle } from '../../units/angle-text.ts';
import { around, type Box, boxOf, grown, type Point, type Segment } from '../kit/geometry.ts';
import { dash, faint, size, tint, weight } from '../kit/ink.ts';
import { drawAim, drawDimension, drawLine, drawPolyline, drawShape, markRadius } from '../kit/marks.ts';
import { layer, mm, type Sheet } from '../kit/sheet.ts';
import type { Line } from '../labels/label.ts';
import { drawLabel, placeWanted, type WantedLabel } from '../labels/labels.ts';
import { aimAlong, type SeenRunway, type Sight, seen, seenRunway } from './final-sight-view.ts';

/** How large a view is drawn, and how far down it reaches. */
export interface Picture {
  /** mm. */
  readonly focus: number;
  /** The tangent below the horizon at the foot of the runway, or where it is cut off. */
  readonly lowest: number;
  readonly cutOff: boolean;
  /** The tangent below the horizon at which the plan's own path meets the aim point. */
  readonly path: number;
}

/** One view, and its frame on the sheet. */
export interface Panel {
  readonly sight: Sight;
  readonly box: Box;
}

/** mm of picture above the horizon. */
export const sky = 9;

export function drawPanel(
  sheet: Sheet,
  plan: Plan,
  { sight, box }: Panel,
  { focus, lowest, path }: Picture,
): void {
  const { eye } = sight;
  const middle = box.x + box.width / 2;
  const horizon = box.y + sky;
  const at = (along: number, across: number): Point => {
    const place = seen({ along, across }, eye);
    return { x: middle + place.right * focus, y: horizon + place.below * focus };
  };
  const part = seenRunway(plan, eye, lowest);
  const view = layer(sheet, `view-${sight.id}`);
  view
    .rect(box.width, box.height)
    .attr({ x: mm(box.x), y: mm(box.y), fill: 'none', stroke: faint, 'stroke-width': weight.hair });
  const rim = { from: { x: box.x, y: horizon }, to: { x: box.x + box.width, y: horizon } };
  drawLine(view, rim, { width: weight.outline });
  const corners = runwayCorners(plan, part, at);
  drawShape(view, corners, tint);
  drawPolyline(view, part.wholeNear ? [...corners, corners[0]!] : corners, { width: weight.straight });
  drawLine(
    view,
    { from: at(part.near, 0), to: at(part.far, 0) },
    { width: weight.line, colour: faint, dashes: dash.centreline },
  );
  const half = plan.runway.width / 2;
  drawLine(view, { from: at(0, -half), to: at(0, half) }, { width: weight.turn });
  const aim = at(aimAlong(plan)!, 0);
  const onPath = horizon + path * focus;
  const level: Segment = { from: { x: box.x, y: onPath }, to: { x: box.x + box.width, y: onPath } };
  drawLine(view, level, { width: weight.line, dashes: '0.3 1.1' });
  const marks = layer(sheet, `marks-${sight.id}`);
  drawAim(marks, aim);
  const beside = box.x + 5;
  const down = { from: { x: beside, y: horizon }, to: { x: beside, y: aim.y } };
  drawDimension(marks, down, { x: 0, y: 1 });
  const lead = { from: { x: beside, y: aim.y }, to: { x: aim.x - markRadius.aim, y: aim.y } };
  drawLine(marks, lead, { width: weight.hair, dashes: dash.sight });
  const lines: Line[] = [
    ...corners.slice(1).map((to, index) => ({ from: corners[index]!, to, halfWidth: 0.3 })),
    { from: at(part.near, 0), to: at(part.far, 0), halfWidth: 0.15 },
    { from: corners[3]!, to: corners[0]!, halfWidth: 0.3 },
    { ...rim, halfWidth: 0.2 },
    { ...level, halfWidth: 0.15 },
    { ...down, halfWidth: 1 },
    { ...lead, halfWidth: 0.1 },
  ];
  const boxes = [around(aim, markRadius.aim), grown(boxOf([at(0, -half), at(0, half)]), 0.6), boxOf(corners)];
  const wanted: WantedLabel[] = [
    {
      lines: [{ text: formatAngle(sight.depression), bold: true }],
      size: size.label,
      anchor: { x: beside, y: (horizon + aim.y) / 2 },
      radius: 0.8,
      prefer: { x: 1, y: 0 },
      reach: 14,
      plain: true,
    },
    {
      lines: [{ text: 'horizon' }],
      size: size.small,
      anchor: { x: box.x + box.width * 0.8, y: horizon },
      radius: 0.2,
      prefer: { x: 0, y: -1 },
      reach: 10,
      plain: true,
    },
    {
      lines: [{ text: 'aim point' }],
      size: size.small,
      anchor: aim,
      radius: markRadius.aim,
      prefer: { x: 1, y: 0 },
      reach: 40,
      slanted: true,
    },
  ];
  const labels = layer(sheet, `labels-${sight.id}`);
  for (const label of placeWanted(sheet.board, wanted, { frame: grown(box, -0.6), boxes, lines })) {
    drawLabel(labels, label);
  }
}

/** From the near left corner round by the far end. */
function runwayCorners(
  { runway }: Plan,
  { near, far }: SeenRunway,
  at: (along: number, across: number) => Point,
): Point[] {
  const half = runway.width / 2;
  return [at(near, -half), at(far, -half), at(far, half), at(near, half)];
}
