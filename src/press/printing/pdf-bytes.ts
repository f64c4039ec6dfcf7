/*
 * The bytes of a PDF as Chromium writes it, to be read and changed as text: one cross-reference table (ISO 32000-1,
 * 7.5.4) and no compressed objects.
 */

/** Latin-1 keeps every byte as it is, as one character. */
export function textOfPdf(pdf: Uint8Array): string {
  return Buffer.from(pdf).toString('latin1');
}

export function pdfOfText(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, 'latin1'));
}

/** `by` replaces what is between `from` and `to`. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

/**
 * The PDF with its edits made, given in the order of the file, and with every byte offset corrected. Throws where
 * something moves and the PDF is not built as expected.
 */
export function withEdits(pdf: string, edits: readonly Edit[]): string {
  if (edits.every(({ from, to, by }) => by.length === to - from)) return spliced(pdf, edits);
  const moved = (offset: number) =>
    edits.reduce((at, { from, to, by }) => (from < offset ? at + by.length - (to - from) : at), offset);
  const table = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(pdf)?.[1]);
  if (!pdf.startsWith('xref', table) || /\/(?:Prev|ObjStm|XRefStm)\b/.test(pdf.slice(table)))
    throw new Error('The PDF has no single table of cross-references where one was expected.');
  const tail = pdf
    .slice(table)
    .replace(/^(\d{10})(?= \d{5} n)/gm, (offset) => String(moved(Number(offset))).padStart(10, '0'))
    .replace(/(?<=startxref\s+)\d+/, String(moved(table)));
  return spliced(pdf.slice(0, table), edits) + tail;
}

function spliced(text: string, edits: readonly Edit[]): string {
  let result = '';
  let at = 0;
  for (const { from, to, by } of edits) {
    result += text.slice(at, from) + by;
    at = to;
  }
  return result + text.slice(at);
}

/** A string as it is in the file, brackets included (ISO 32000-1, 7.3.4); for a regular expression. */
export const pdfString = String.raw`\((?:[^\\()]|\\[\s\S])*\)|<[\dA-Fa-f\s]*>`;

const escapes: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** The words of a text string (ISO 32000-1, 7.9.2.2): UTF-16 after its mark, else one byte for each letter. */
export function wordsOf(string: string): string {
  const bytes = string.startsWith('<')
    ? Buffer.from(string.replace(/[<>\s]/g, ''), 'hex').toString('latin1')
    : string
        .slice(1, -1)
        .replace(/\\([0-7]{1,3}|[\s\S])/g, (_all, sign: string) =>
          /[0-7]/.test(sign) ? String.fromCharCode(Number.parseInt(sign, 8)) : (escapes[sign] ?? sign),
        );
  if (!bytes.startsWith('\u00fe\u00ff')) return bytes;
  return Buffer.from(bytes.slice(2), 'latin1').swap16().toString('utf16le');
}

/** The text string of these words. */
export function stringOf(words: string): string {
  const hex = Buffer.from(words, 'utf16le').swap16().toString('hex').toUpperCase();
  return `<FEFF${hex}>`;
}
