import { formatAngle } from '../../units/angle-text.ts';
import { formatDistance, formatHeight } from '../../words/figures/format.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Drawing, DrawingBoard, DrawingOptions } from '../kit/drawing.ts';
import type { Box, Point } from '../kit/geometry.ts';
import { face, faint, ink, size, weight } from '../kit/ink.ts';
import { drawArrowhead, drawDimension, drawKey, drawLine } from '../kit/marks.ts';
import { roundScales } from '../kit/scale.ts';
import { drawScaleBar, scaleBlock, scaleText } from '../kit/scale-bar.ts';
import { closeSheet, layer, mm, mmPerPixel, openSheet, type Sheet, wholePixels } from '../kit/sheet.ts';
import { blockSize, setBlock, setLine, type TextLine, wrapped } from '../kit/text.ts';

/** A whole turn with its bank held, in still air. rad, m. */
export interface DrawnTurn {
  readonly bank: number;
  readonly radius: number;
  /** In half a turn and in a whole one. */
  readonly heightLost: { readonly half: number; readonly whole: number };
}

/** Room: at least 35 mm for each circle, by 70 mm. */
export interface TurnsOptions extends DrawingOptions {
  /** Whose turns these are, for the title: `Osier 15`. */
  readonly aircraft: string;
  /** What the turns are flown with, in a sentence beside the scale bar. */
  readonly note: string;
}

export interface TurnsDrawing extends Drawing {
  /** 1:`scale` on paper printed at full size. */
  readonly scale: number;
}

/** mm. */
const margin = 5;
const apart = 7;
const underCircle = 3.4;

/** A circle with its place on the page and the lines under it. */
interface Placed {
  readonly centre: Point;
  readonly radius: number;
  readonly lines: readonly TextLine[];
  readonly block: Box;
}

/**
 * The circles of turns side by side at the largest round scale that fits, with radius and height lost.
 * @throws RangeError where there is no turn, or no room for it.
 */
export function turnsDrawing(turns: readonly DrawnTurn[], options: TurnsOptions): TurnsDrawing {
  const { board, id, units } = options;
  if (turns.length === 0) throw new RangeError('A drawing of turns needs at least one');
  const width = wholePixels(options.maxWidth);
  const strip = stripLayout(board, options.note, width);
  for (const scale of roundScales(100)) {
    const placed = placeCircles(turns, scale, width, options);
    if (placed === undefined) continue;
    const foot = Math.max(...placed.map(({ block }) => block.y + block.height)) + margin;
    if (foot + strip.height > options.maxHeight) continue;
    const height = Math.ceil((foot + strip.height) / mmPerPixel - 1e-6) * mmPerPixel;
    const sheet = openSheet(board, id, width, height);
    drawCircles(sheet, placed);
    drawStrip(sheet, strip, scale, height - strip.height);
    const title = `Turning circles of ${options.aircraft}, seen from above, ${scaleText(scale)}`;
    const words = turns.map((turn) => turnSentence(turn, units)).join(' ');
    const drawing = closeSheet(sheet, title, `${options.note} Scale ${scaleText(scale)}. ${words}`);
    return { ...drawing, scale };
  }
  throw new RangeError(`There is no room for ${turns.length} turning circles in ${Math.round(width)} mm`);
}

function turnSentence({ bank, radius, heightLost }: DrawnTurn, units: PageUnits): string {
  const lost = `${formatHeight(heightLost.half, units)} lost in half a turn, ${formatHeight(heightLost.whole, units)} in a whole one`;
  return `At ${formatAngle(bank)} of bank: radius ${formatDistance(radius, units)}, ${lost}.`;
}

function turnLines({ bank, radius, heightLost }: DrawnTurn, units: PageUnits): TextLine[] {
  return [
    { text: `Bank ${formatAngle(bank)}`, bold: true },
    { text: `radius ${formatDistance(radius, units)}` },
    { text: `half a turn: −${formatHeight(heightLost.half, units)}` },
    { text: `whole turn: −${formatHeight(heightLost.whole, units)}` },
  ];
}

/** Columns as wide as the circle or the lines under it, whichever is wider; undefined where they do not fit side by side. */
function placeCircles(
  turns: readonly DrawnTurn[],
  scale: number,
  width: number,
  { board, units }: TurnsOptions,
): Placed[] | undefined {
  const columns = turns.map((turn) => {
    const lines = turnLines(turn, units);
    const radius = (turn.radius * 1000) / scale;
    const block = blockSize(board, lines);
    return { lines, radius, block, width: Math.max(2 * radius + weight.turn, block.width) };
  });
  const taken = columns.reduce((sum, column) => sum + column.width, apart * (columns.length - 1));
  if (taken + 2 * margin > width) return undefined;
  const ground = margin + 2 * Math.max(...columns.map(({ radius }) => radius)) + 1.5;
  let x = (width - taken) / 2;
  return columns.map(({ lines, radius, block, width: wide }) => {
    const centre = { x: x + wide / 2, y: ground - radius };
    x += wide + apart;
    return {
      centre,
      radius,
      lines,
      block: { ...block, x: centre.x - block.width / 2, y: ground + underCircle },
    };
  });
}

function drawCircles(sheet: Sheet, placed: readonly Placed[]): void {
  const circles = layer(sheet, 'circles');
  const labels = layer(sheet, 'labels');
  for (const { centre, radius, lines, block } of placed) {
    circles.circle(2 * radius).attr({
      cx: mm(centre.x),
      cy: mm(centre.y),
      r: mm(radius),
      fill: 'none',
      stroke: ink,
      'stroke-width': weight.turn,
    });
    const right = { x: 1, y: 0 };
    drawDimension(circles, { from: centre, to: { x: centre.x + radius, y: centre.y } }, right);
    // Flown round to the left from the lowest point, where the turn begins; half of it is complete at the top.
    drawArrowhead(
      circles,
      { x: centre.x - radius, y: centre.y + 1.7 },
      { x: 0, y: 1 },
      { length: 3.4, spread: 1.7 },
    );
    drawKey(circles, { x: centre.x, y: centre.y + radius });
    const top = centre.y - radius;
    drawLine(
      circles,
      { from: { x: centre.x, y: top - 1.5 }, to: { x: centre.x, y: top + 1.5 } },
      { width: 0.4 },
    );
    setBlock(labels, lines, block, { align: 'middle' });
  }
}

interface Strip {
  readonly height: number;
  readonly note: readonly string[];
}

/** Under the circles: the scale bar, and the note to its right. */
function stripLayout(board: DrawingBoard, note: string, width: number): Strip {
  const legend = `${note} Ring: where the turn begins; stroke: half of it.`;
  const lines = wrapped(board, legend, width - scaleBlock - 4 * margin, size.note);
  return { note: lines, height: 3 + Math.max(15.5, lines.length * size.note * face.leading + 3) };
}

function drawStrip(sheet: Sheet, { note }: Strip, scale: number, top: number): void {
  const strip = layer(sheet, 'legend');
  drawLine(
    strip,
    { from: { x: 0, y: top }, to: { x: sheet.width, y: top } },
    { width: weight.hair, colour: faint },
  );
  drawScaleBar(sheet, scale, { x: margin, y: top + 3 });
  const x = margin + scaleBlock + 2 * margin;
  for (const [index, text] of note.entries()) {
    const y = top + 3 + size.note * (face.cap + index * face.leading);
    setLine(strip, { text }, { x, y }, { size: size.note });
  }
}
