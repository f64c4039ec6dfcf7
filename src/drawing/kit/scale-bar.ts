import { metresPerFoot } from '../../units/factors.ts';
import { numberText } from '../../units/rounding.ts';
import type { Point } from './geometry.ts';
import { face, ink, size, weight } from './ink.ts';
import { drawLine } from './marks.ts';
import { roundBelow } from './scale.ts';
import { layer, mm, type Sheet } from './sheet.ts';
import { setLine } from './text.ts';

/** mm: the scale bar is no longer than this; with its unit it takes up this much. */
const longestBar = 42;
export const scaleBlock = longestBar + 12;

/** The scale in figures, as it is printed. */
export function scaleText(scale: number): string {
  return `1:${numberText(scale, 1)}`;
}

/**
 * Metres above, feet below. The upper line is the one to hold a ruler to: `class="scale-bar"`, with its length on the
 * ground and on the paper in `data-` attributes.
 */
export function drawScaleBar(sheet: Sheet, scale: number, at: Point): void {
  const group = layer(sheet, 'scale');
  const x = at.x;
  const y = at.y + size.small * face.cap + 2.2;
  const metres = roundBelow((longestBar * scale) / 1000);
  const feet = roundBelow((longestBar * scale) / 1000 / metresPerFoot);
  const length = (metres * 1000) / scale;
  const bar = group.line(mm(x), mm(y), mm(x + length), mm(y)).attr({
    id: `${sheet.id}-scale-bar`,
    class: 'scale-bar',
    'data-length-m': metres,
    'data-length-mm': mm(length),
    stroke: ink,
    'stroke-width': 0.4,
  });
  bar.attr({ fill: 'none' });
  const below = y + 1.1;
  const feetLength = (feet * metresPerFoot * 1000) / scale;
  drawLine(group, { from: { x, y: below }, to: { x: x + feetLength, y: below } }, { width: 0.4 });
  drawDivisions(sheet, group, { start: { x, y }, total: metres, length, unit: 'm' });
  drawDivisions(sheet, group, { start: { x, y: below }, total: feet, length: feetLength, unit: 'ft' });
  const baseline = below + 1.6 + size.small * face.cap + 1.8 + size.label * face.cap;
  setLine(group, { text: `Scale ${scaleText(scale)}`, bold: true }, { x, y: baseline });
  const width = sheet.board.measure(`Scale ${scaleText(scale)}`, size.label, 'bold');
  setLine(group, { text: 'printed at full size' }, { x: x + width + 1.2, y: baseline });
}

/** One of the two lines of the scale bar: what it stands for on the ground, and its place and length on the page, mm. */
interface ScaleLine {
  readonly start: Point;
  readonly total: number;
  readonly length: number;
  readonly unit: 'm' | 'ft';
}

function drawDivisions(
  sheet: Sheet,
  group: ReturnType<typeof layer>,
  { start, total, length, unit }: ScaleLine,
): void {
  const away = unit === 'm' ? -1 : 1;
  const parts = /^5/.test(String(total)) ? 5 : /^2/.test(String(total)) ? 4 : 2;
  for (let index = 0; index <= parts; index += 1) {
    const x = start.x + (length * index) / parts;
    const reach = index === 0 || index === parts ? 1.5 : 0.9;
    drawLine(
      group,
      { from: { x, y: start.y }, to: { x, y: start.y + away * reach } },
      { width: weight.line },
    );
  }
  const baseline = away < 0 ? start.y - 2.1 : start.y + 2.1 + size.small * face.cap;
  setLine(group, { text: '0' }, { x: start.x, y: baseline }, { align: 'middle', size: size.small });
  const text = numberText(total, 1);
  setLine(group, { text }, { x: start.x + length, y: baseline }, { align: 'middle', size: size.small });
  const half = numberText(total / 2, 1);
  if (parts !== 5)
    setLine(
      group,
      { text: half },
      { x: start.x + length / 2, y: baseline },
      { align: 'middle', size: size.small },
    );
  const beside = start.x + length + Math.max(4, sheet.board.measure(text, size.small) / 2 + 0.9);
  setLine(group, { text: unit }, { x: beside, y: baseline }, { size: size.small });
}
