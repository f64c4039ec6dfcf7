import type { TrackSample } from '../flight/plan.ts';
import type { Point, Segment } from './geometry.ts';
import { size } from './ink.ts';
import type { WantedLabel } from './labels.ts';

/** A fault drawn over the plan: its track, and what stands at its end. */
export interface DrawnFault {
  readonly track: readonly TrackSample[];
  /** `Base turn late`. */
  readonly name: string;
  /** Where it ends, in figures: `250 m short`. */
  readonly end: string;
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
