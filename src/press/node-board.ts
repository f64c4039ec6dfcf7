import { readFileSync } from 'node:fs';
import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import * as fontkit from 'fontkit';
import { createSVGWindow } from 'svgdom';
import type { DrawingBoard } from '../drawing/drawing.ts';
import { type Face, faces } from './fonts.ts';

/**
 * The drawing board under Node: svgdom to draw on, our own font files to measure with (svgdom's own text width is up
 * to 5 % off, enough for labels to touch). The fonts are opened when first measured with.
 */
export function createNodeBoard(): DrawingBoard {
  return {
    createSvg: () => {
      const window = createSVGWindow();
      // svg.js keeps one window for the whole process, and looks into it whenever it makes an element.
      registerWindow(window, window.document);
      return SVG(window.document.documentElement) as Svg;
    },
    measure: (text, size, weight = 'regular') => {
      const font = openFont(weight === 'bold' ? faces.sansBold : faces.sans);
      return (font.layout(text).advanceWidth / font.unitsPerEm) * size;
    },
  };
}

const opened = new Map<Face, fontkit.Font>();

function openFont(face: Face): fontkit.Font {
  const known = opened.get(face);
  if (known !== undefined) return known;
  const font = fontkit.create(readFileSync(face.path));
  if (!('layout' in font)) throw new Error(`${face.path} holds several fonts; one was expected.`);
  opened.set(face, font);
  return font;
}
