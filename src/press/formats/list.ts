import type { Format } from './format.ts';

/** The files written for every packet, volume and card. The first is the one that a command names. */
export const formats: readonly Format[] = [
  // The PDF is put in place first: it is the one that another program may hold open.
  { ending: 'pdf', write: whenWanted(() => import('./pdf.ts')) },
  { ending: 'html', write: whenWanted(() => import('./html.ts')) },
  { ending: 'txt', write: whenWanted(() => import('./text.ts')) },
];

/** Where nothing is written, no writer is loaded. */
function whenWanted(load: () => Promise<Pick<Format, 'write'>>): Format['write'] {
  return async (...asked) => (await load()).write(...asked);
}

/** `.pdf, .html and .txt`, as a command says it. */
export function endingsInWords(): string {
  const endings = formats.map(({ ending }) => `.${ending}`);
  return `${endings.slice(0, -1).join(', ')} and ${endings.at(-1)}`;
}
