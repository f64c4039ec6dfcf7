import type { Container } from '@svgdotjs/svg.js';
import type { TrackSample } from '../../flight/terms/plan.ts';
import type { DrawingOptions } from '../kit/drawing.ts';
import type { Point, Segment } from '../kit/geometry.ts';
import { faultDashes, size, weight } from '../kit/ink.ts';
import { drawLine, drawPolyline } from '../kit/marks.ts';
import type { WantedLabel } from '../labels/labels.ts';

/** A fault drawn over the plan: its track, and what is printed at its end. */
export interface DrawnFault {
  readonly track: readonly TrackSample[];
  /** `Base turn late`. */
  readonly name: string;
  /** Where it ends, in figures: `250 m short`. */
  readonly end: string;
}

/** Of a drawing that shows faults as well. */
export interface FaultDrawingOptions extends DrawingOptions {
  /** Drawn over the plan, dashed. */
  readonly faults?: readonly DrawnFault[];
}

/** For a reader who cannot see it. */
export function faultSentence({ name, end }: DrawnFault): string {
  return `Fault flown over it: ${name}, ${end}.`;
}

/** mm: half the size of the cross where a fault ends. */
const cross = 1.1;

/** The cross where a fault ends. */
export function endMark({ x, y }: Point): Segment[] {
  return [
    { from: { x: x - cross, y: y - cross }, to: { x: x + cross, y: y + cross } },
    { from: { x: x - cross, y: y + cross }, to: { x: x + cross, y: y - cross } },
  ];
}

export function endLabel({ name, end }: DrawnFault, at: Point): WantedLabel {
  return {
    lines: [{ text: name }, { text: end, bold: true }],
    size: size.label,
    anchor: at,
    radius: cross,
    reach: 52,
  };
}

/** A fault on the page, its end last. */
export interface FaultLine {
  readonly points: readonly Point[];
  readonly end: Point;
}

/** The paths of faults, each dashed its own way, and the crosses at their ends. */
export function drawFaults(into: Container, faults: readonly FaultLine[]): void {
  for (const [index, { points, end }] of faults.entries()) {
    drawPolyline(into, points, { width: weight.outline, dashes: faultDashes[index % faultDashes.length] });
    for (const stroke of endMark(end)) drawLine(into, stroke, { width: weight.straight });
  }
}
