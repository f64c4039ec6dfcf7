import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Drawing } from '../src/drawing/drawing.ts';
import { captionNumber } from '../src/lesson/captions.ts';

export interface FigureParts {
  readonly name: string;
  readonly ordinal: number;
  readonly drawing: Drawing;
  readonly caption: string;
  readonly source: string;
}

/** The id that a drawing in the figure takes; the figure's own is the same without `-drawing`. */
export function drawingId(name: string, ordinal: number): string {
  return `${name}-${ordinal}-drawing`;
}

/** A drawing with its numbered caption and the line that says what it was computed for. */
export function figure({ name, ordinal, drawing, caption, source }: FigureParts): Element {
  return h('figure', { className: ['drawing', name], id: `${name}-${ordinal}` }, [
    // The drawing is our own output, not the author's.
    { type: 'raw', value: drawing.svg },
    h('figcaption', [captionNumber('Figure'), ` ${caption} `, h('span', { className: ['source'] }, source)]),
  ]);
}
