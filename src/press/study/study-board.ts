import { SVG, type Svg } from '@svgdotjs/svg.js';
import type { DrawingBoard } from '../../drawing/kit/drawing.ts';

const family = '"IBM Plex Sans"';
const weights = { regular: 400, bold: 600 } as const;
/** CSS pixels: large, so that no width is rounded to a pixel of a small type size. */
const measured = 100;

/** The drawing board in a page: its own document to draw on, its own fonts to measure with. */
export function createStudyBoard(): DrawingBoard {
  const brush = document.createElement('canvas').getContext('2d');
  if (!brush) throw new Error('This browser has no canvas to measure text with');
  const widths = new Map<string, number>();
  return {
    createSvg: () => SVG() as Svg,
    measure: (text, size, weight = 'regular') => {
      const name = `${weight} ${text}`;
      let width = widths.get(name);
      if (width === undefined) {
        brush.font = `${weights[weight]} ${measured}px ${family}`;
        width = brush.measureText(text).width / measured;
        widths.set(name, width);
      }
      return width * size;
    },
  };
}

/** The faces must be loaded before anything is measured: until then a browser measures with another. */
export async function loadDrawingFaces(): Promise<void> {
  await Promise.all(
    Object.values(weights).map((weight) => document.fonts.load(`${weight} ${measured}px ${family}`)),
  );
}
