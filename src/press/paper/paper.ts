import { noteColumn, noteGap } from '../../../components/margin.ts';

/** A sheet and its margins, mm. Left and right pages mirror `inner` and `outer`, so the width of the text is the same. */
export interface Paper {
  readonly name: PaperName;
  /** CSS page size. */
  readonly cssSize: string;
  readonly width: number;
  readonly height: number;
  readonly margin: {
    readonly top: number;
    readonly bottom: number;
    readonly inner: number;
    readonly outer: number;
  };
}

/** The part of it that printing asks for, and that a card has too. */
export type Sheet = Pick<Paper, 'width' | 'height' | 'margin'>;

export type PaperName = 'A4' | 'Letter';

/** mm: the binding edge takes punched holes, the outer edge what every printer can print. */
const margin = { top: 21, bottom: 20, inner: 21, outer: 15 } as const;

// ISO 216 (A4) and ANSI/ASME Y14.1 (A, "Letter", 8.5 in x 11 in).
export const papers: Readonly<Record<PaperName, Paper>> = {
  A4: { name: 'A4', cssSize: 'A4', width: 210, height: 297, margin },
  Letter: { name: 'Letter', cssSize: 'letter', width: 215.9, height: 279.4, margin },
};

/** Width in mm between the margins: the widest a drawing or a table may be. 174 on A4, 179.9 on Letter. */
export function contentWidth(paper: Pick<Paper, 'width' | 'margin'>): number {
  return paper.width - paper.margin.inner - paper.margin.outer;
}

/** Height in mm between the margins. */
export function contentHeight(paper: Pick<Paper, 'height' | 'margin'>): number {
  return paper.height - paper.margin.top - paper.margin.bottom;
}

/** Width in mm of a line of text: 128 on A4. */
export function textWidth(paper: Paper): number {
  return contentWidth(paper) - noteColumn - noteGap;
}
