import { type Edit, pdfOfText, textOfPdf, withEdits } from './pdf-bytes.ts';

/**
 * Takes out of a PDF what differs from print to print. Its dates become the date of the inputs. The names of its
 * table headings, which count everything the browser has shown since it started, in the order it came to each, are
 * counted from 1 in the order of the document. The same inputs then give the same bytes, whenever they are printed
 * and whatever else is printed before or at the same time. Throws where the PDF is not built as expected: its bytes
 * would change unseen.
 */
export function repeatablePdf(pdf: Uint8Array, date: Date): Uint8Array {
  return pdfOfText(plainFigures(renumbered(dated(textOfPdf(pdf), date))));
}

/**
 * A figure of the document holds its drawing, which is tagged as a figure with its description, and its caption. The
 * outer tag becomes a division, because a figure without a description of its own is not allowed (ISO 14289-1, 7.3).
 * It has the same length, so that no offset moves.
 */
function plainFigures(pdf: string): string {
  return pdf.replace(
    /(\/Type \/StructElem\s+\/S \/)Figure(?=\s(?:(?!\/Alt\b|endobj)[\s\S])*endobj)/g,
    '$1Div   ',
  );
}

/** Dates in the form of ISO 32000-1, 7.9.4. */
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

const anyName = /\(node(\d{8})\)/g;
/** A leaf of the name tree (ISO 32000-1, 7.9.6): each name with its object, sorted by name. */
const namesList = /\/Names ?\[((?:\(node\d{8}\) \d+ 0 R ?)+)\]/g;
const limits = /\/Limits ?\[\(node\d{8}\) ?\(node\d{8}\)\]/g;

/** Objects are numbered in the order of the document. */
function renumbered(pdf: string): string {
  const objects = new Map<string, number>();
  for (const [, list] of pdf.matchAll(namesList))
    for (const [, digits, object] of list!.matchAll(/\(node(\d{8})\) (\d+) 0 R/g))
      objects.set(digits!, Number(object));
  const found = [...new Set(Array.from(pdf.matchAll(anyName), (match) => match[1]!))].sort();
  const order = (digits: string) => objects.get(digits) ?? Number.POSITIVE_INFINITY;
  const inOrder = found.toSorted((a, b) => (order(a) === order(b) ? 0 : order(a) - order(b)));
  const rank = new Map(inOrder.map((digits, index) => [digits, index + 1]));
  const place = new Map(found.map((digits, index) => [digits, index + 1]));
  const sortedObjects = [...objects.values()].sort((a, b) => a - b);

  // A leaf keeps its number of names, and so do the limits, which are therefore assigned by position.
  let next = 0;
  const leaf = (list: string) =>
    Array.from(list.matchAll(anyName), () => {
      next += 1;
      return `${nameOf(next)} ${sortedObjects[next - 1]} 0 R`;
    }).join(' ');
  const edits: Edit[] = [];
  const renamed = pdf.replace(anyName, (_all, digits: string) => nameOf(rank.get(digits)!));
  for (const match of pdf.matchAll(limits))
    edits.push(
      editOf(
        match,
        match[0].replace(anyName, (_all, digits: string) => nameOf(place.get(digits)!)),
      ),
    );
  for (const match of pdf.matchAll(namesList)) edits.push(editOf(match, `/Names [${leaf(match[1]!)}]`));
  return withEdits(
    renamed,
    edits.sort((a, b) => a.from - b.from),
  );
}

function nameOf(number: number): string {
  return `(node${String(number).padStart(8, '0')})`;
}

function editOf(match: RegExpExecArray, by: string): Edit {
  return { from: match.index, to: match.index + match[0].length, by };
}
