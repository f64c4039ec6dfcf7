import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Drawing } from '../src/drawing/kit/drawing.ts';
import { captionNumber } from '../src/lesson/captions.ts';
import { words } from '../src/school/fields.ts';

/** What an author calls a figure: printed before the caption, and in a book's list of figures. */
export const figureTitle = words('The 180° approach from above')
  .describe("What the figure is called, before the caption's own words")
  .optional();

export interface FigureParts {
  readonly name: string;
  readonly ordinal: number;
  readonly title?: string | undefined;
  readonly drawing: Drawing;
  readonly caption: string;
  readonly source: string;
}

/** The id of a drawing in the figure; the figure's own id is the same without `-drawing`. */
export function drawingId(name: string, ordinal: number): string {
  return `${name}-${ordinal}-drawing`;
}

/** A drawing with its numbered caption and the line that says what it was computed for. */
export function figure({ name, ordinal, title, drawing, caption, source }: FigureParts): Element {
  const called = title === undefined ? '' : `${title.trim().replace(/\.$/, '')}. `;
  return h('figure', { className: ['drawing', name], id: `${name}-${ordinal}` }, [
    drawing.svg,
    h('figcaption', [
      captionNumber('Figure'),
      ` ${called}${caption} `,
      h('span', { className: ['source'] }, source),
    ]),
  ]);
}
