/**
 * Takes out of a PDF what differs from print to print, in place and at the same length: its dates become the date of
 * the inputs, and the names of its table headings, which count everything the browser has shown since it started,
 * count from 1. The same inputs then give the same bytes, whenever they are printed and after whatever else.
 * Throws where the PDF is not built as expected: its bytes would change unseen.
 */
export function repeatablePdf(pdf: Uint8Array, date: Date): Uint8Array {
  // Latin-1 keeps every byte as it is, one character each.
  const text = Buffer.from(pdf).toString('latin1');
  return new Uint8Array(Buffer.from(renumbered(dated(text, date)), 'latin1'));
}

/** Dates as of ISO 32000-1, 7.9.4. */
function dated(pdf: string, date: Date): string {
  const stamp = `D:${date.toISOString().slice(0, 19).replace(/\D/g, '')}+00'00'`;
  let found = 0;
  const result = pdf.replace(
    /(\/(?:CreationDate|ModDate) ?\()(D:\d{14}[^)]*)\)/g,
    (_all, key: string, old: string) => {
      found += 1;
      if (old.length !== stamp.length)
        throw new Error(`A date in the PDF has another form than expected: ${old}`);
      return `${key}${stamp})`;
    },
  );
  if (found === 0) throw new Error('The PDF carries no date where one was expected.');
  return result;
}

/** The names keep their order, since the tree that lists them must stay sorted (ISO 32000-1, 7.9.6). */
function renumbered(pdf: string): string {
  const name = /\(node(\d{8})\)/g;
  const old = [...new Set(Array.from(pdf.matchAll(name), (match) => match[1]!))].sort();
  const rank = new Map(old.map((digits, index) => [digits, String(index + 1).padStart(8, '0')]));
  return pdf.replace(name, (_all, digits: string) => `(node${rank.get(digits)})`);
}
