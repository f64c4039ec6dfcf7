import { readFileSync } from 'node:fs';
import { registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import * as fontkit from 'fontkit';
import { createSVGWindow } from 'svgdom';
import type { DrawingBoard } from '../../drawing/kit/drawing.ts';
import { type Face, faces } from '../paper/fonts.ts';

/**
 * The drawing board under Node: svgdom to draw on, our own font files to measure with (svgdom's own text width is up
 * to 5 % off, enough for labels to touch). The fonts are opened when they are first used.
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
      return widthInEms(text, weight === 'bold' ? faces.sansBold : faces.sans) * size;
    },
  };
}

/**
 * Drawings of one lesson have the same few words in every wind and edition, and laying them out takes longer than
 * everything else.
 */
const widths = new Map<string, number>();
const mostWidths = 20_000;

function widthInEms(text: string, face: Face): number {
  const key = `${face.path}\n${text}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  const font = openFont(face);
  const width = font.layout(text).advanceWidth / font.unitsPerEm;
  if (widths.size >= mostWidths) widths.clear();
  widths.set(key, width);
  return width;
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
