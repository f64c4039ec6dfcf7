import type { Paper, PaperName } from '../paper/paper.ts';

/** A sheet that is strapped to the knee. mm. */
export type CardPaper = Omit<Paper, 'name'> & { readonly name: CardPaperName };

export type CardPaperName = 'A5' | 'half-letter';

/** mm on every side: what a printer can print, and a clip can hold. */
const margin = { top: 7, bottom: 6, inner: 7, outer: 7 } as const;

// ISO 216 (A5), and ANSI/ASME Y14.1 A, 8.5 in x 11 in, cut in half.
export const cardPapers: Readonly<Record<CardPaperName, CardPaper>> = {
  A5: { name: 'A5', cssSize: '148mm 210mm', width: 148, height: 210, margin },
  'half-letter': { name: 'half-letter', cssSize: '5.5in 8.5in', width: 139.7, height: 215.9, margin },
};

/** The card that half a sheet of the school's paper makes. */
export function cardPaperOf(paper: PaperName): CardPaperName {
  return paper === 'A4' ? 'A5' : 'half-letter';
}
