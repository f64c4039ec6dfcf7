import type { Svg } from '@svgdotjs/svg.js';
import type { Element } from 'hast';
import type { PageUnits } from '../../words/figures/page-units.ts';

/** What a drawing is drawn on and measured with: svgdom and font files under Node, the page itself in a browser. */
export interface DrawingBoard {
  /** An empty SVG root element. */
  readonly createSvg: () => Svg;
  /** Width in mm of a text set in the drawing face at `size` mm. */
  readonly measure: (text: string, size: number, weight?: 'regular' | 'bold') => number;
}

/** What every drawing is told. */
export interface DrawingOptions {
  readonly units: PageUnits;
  readonly board: DrawingBoard;
  /** Unique in the page; every id in the drawing begins with it. */
  readonly id: string;
  /** Room on the paper, mm. The drawing takes the whole width, and of the height what it needs. */
  readonly maxWidth: number;
  readonly maxHeight: number;
}

/** A finished drawing. */
export interface Drawing {
  /** The `<svg>` element: outer size in whole CSS pixels, `viewBox` in mm, `role="img"` with a title and a description. */
  readonly svg: Element;
  /** Size on paper, mm. */
  readonly width: number;
  readonly height: number;
  /** What a reader who cannot see it needs to be told: heights, distances, wind, in figures. */
  readonly description: string;
}
