import type { G, Svg } from '@svgdotjs/svg.js';
import type { Drawing, DrawingBoard } from './drawing.ts';
import { fontFamily, ink, paper } from './ink.ts';
import { svgTree } from './svg-tree.ts';

/** CSS fixes 96 px to the inch (CSS Values and Units Level 3, 5.2). */
export const mmPerPixel = 25.4 / 96;

/** The largest whole number of CSS pixels within `mm`, in mm: only whole pixels print true to scale. */
export function wholePixels(mm: number): number {
  return Math.floor(mm / mmPerPixel + 1e-6) * mmPerPixel;
}

/** A page coordinate, mm, to a thousandth: two hundred times finer than a printer's dot. */
export function mm(value: number): number {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? 0 : rounded;
}

/** An empty drawing of `width` by `height` mm (whole pixels), drawn in mm. */
export interface Sheet {
  readonly svg: Svg;
  readonly board: DrawingBoard;
  /** Prefix of every id in the drawing. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
}

export function openSheet(board: DrawingBoard, id: string, width: number, height: number): Sheet {
  const svg = board.createSvg();
  svg.attr({
    id,
    width: Math.round(width / mmPerPixel),
    height: Math.round(height / mmPerPixel),
    viewBox: `0 0 ${width.toFixed(5)} ${height.toFixed(5)}`,
    role: 'img',
    'aria-labelledby': `${id}-title ${id}-description`,
    'font-family': fontFamily,
    fill: ink,
    stroke: 'none',
  });
  svg.rect(width, height).attr({ fill: paper });
  return { svg, board, id, width, height };
}

/** A group with an id of its own, so that a part of the drawing can be found. */
export function layer(sheet: Sheet, name: string): G {
  return sheet.svg.group().attr({ id: `${sheet.id}-${name}` }) as G;
}

/** Puts the title and the description in, and hands the drawing over. */
export function closeSheet(sheet: Sheet, title: string, description: string): Drawing {
  const { svg, id, width, height } = sheet;
  const texts = [
    svg
      .element('title')
      .attr({ id: `${id}-title` })
      .words(title),
    svg
      .element('desc')
      .attr({ id: `${id}-description` })
      .words(description),
  ];
  // First in the drawing, where assistive technology looks for them; inserted last one first.
  for (const text of texts.reverse()) text.back();
  return { svg: svgTree(svg.node), width, height, description };
}
