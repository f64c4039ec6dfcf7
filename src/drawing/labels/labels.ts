import type { Container } from '@svgdotjs/svg.js';
import type { DrawingBoard } from '../kit/drawing.ts';
import type { Point } from '../kit/geometry.ts';
import { weight } from '../kit/ink.ts';
import { drawLine } from '../kit/marks.ts';
import { mm } from '../kit/sheet.ts';
import { blockSize, setBlock, type TextLine } from '../kit/text.ts';
import type { LabelRequest, PlacedLabel, Surroundings } from './label.ts';
import { placeLabels } from './label-placement.ts';

/** A label, and where it would like to be. mm. */
export interface WantedLabel {
  readonly lines: readonly TextLine[];
  readonly size: number;
  /** Turned a quarter to the right, its top towards the right of the page. */
  readonly turned?: boolean;
  readonly anchor: Point;
  /** Other anchors that would do as well, the earlier the better. */
  readonly alternatives?: readonly Point[];
  /** The radius of the mark at the anchor. */
  readonly radius: number;
  readonly prefer?: Point | undefined;
  readonly reach: number;
  /** Without a leader, wherever it is put. */
  readonly plain?: boolean;
  /** No upright leader, which would be taken for something that stands or lies there. */
  readonly slanted?: boolean;
}

export interface DrawnLabel {
  readonly wanted: WantedLabel;
  readonly place: PlacedLabel;
}

export function placeWanted(
  board: DrawingBoard,
  wanted: readonly WantedLabel[],
  surroundings: Surroundings,
): DrawnLabel[] {
  const requests = wanted.map((label, index): LabelRequest => {
    const block = blockSize(board, label.lines, label.size);
    const { anchor, alternatives, radius, prefer, reach, plain, slanted } = label;
    const box = label.turned ? { width: block.height, height: block.width } : block;
    return { id: String(index), anchor, alternatives, radius, prefer, reach, plain, slanted, ...box };
  });
  return placeLabels(requests, surroundings).map((place, index) => ({ wanted: wanted[index]!, place }));
}

export function drawLabel(into: Container, { wanted, place }: DrawnLabel): void {
  if (place.leader) drawLine(into, place.leader, { width: weight.hair });
  const { box, side } = place;
  const { lines, size } = wanted;
  if (!wanted.turned) {
    setBlock(into, lines, box, { align: side, size });
    return;
  }
  const corner = `translate(${mm(box.x + box.width)} ${mm(box.y)}) rotate(90)`;
  const group = into.group().attr({ transform: corner });
  setBlock(group, lines, { x: 0, y: 0, width: box.height, height: box.width }, { align: 'middle', size });
}
