import type { Box, Point, Segment } from '../kit/geometry.ts';

/** A label that wants a place near its anchor. mm. */
export interface LabelRequest {
  readonly id: string;
  readonly anchor: Point;
  /** Other anchors that would do as well: along a line, say. The earlier the better. */
  readonly alternatives?: readonly Point[] | undefined;
  /** The radius of the mark at the anchor: the leader starts at its edge. */
  readonly radius: number;
  readonly width: number;
  readonly height: number;
  /** Unit vector of the side where it is wanted. */
  readonly prefer?: Point | undefined;
  /** How far from its anchor it may go. */
  readonly reach: number;
  /** Without a leader, wherever it is put. */
  readonly plain?: boolean | undefined;
  /** No upright leader, which would be taken for something that stands or lies there. */
  readonly slanted?: boolean | undefined;
}

/** What a label must keep clear of. */
export interface Surroundings {
  /** No label leaves it. */
  readonly frame: Box;
  /** Marks, fills, furniture. */
  readonly boxes: readonly Box[];
  /** Lines, `halfWidth` mm to either side. */
  readonly lines: readonly Line[];
}

export interface Line extends Segment {
  readonly halfWidth: number;
}

export interface PlacedLabel {
  readonly id: string;
  readonly box: Box;
  /** From the mark to the label; undefined where the label is right beside it. */
  readonly leader?: Segment | undefined;
  /** Where the label is, seen from its anchor: how its text is aligned. */
  readonly side: 'start' | 'middle' | 'end';
  /** False where there was no free place, or none for its leader: the label was put where it hides least. */
  readonly clear: boolean;
}
