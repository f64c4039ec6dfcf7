/**
 * Gives the bookmarks of a printed PDF the words of their headings. A browser writes into a bookmark whatever it drew
 * of the heading: without the space at which the heading turns to its next line, and twice where its letters reach
 * over the upper edge of their page. A title that is no heading of the document's stays as it is.
 *
 * The PDF must be as Chromium writes it: a table of cross-references (ISO 32000-1, 7.5.4) and no compressed objects.
 * Throws where it is built otherwise.
 */
export function outlineTitles(pdf: Uint8Array, headings: readonly string[]): Uint8Array {
  // Latin-1 keeps every byte as it is, one character each.
  const text = Buffer.from(pdf).toString('latin1');
  const words = new Map<string, string>();
  for (const heading of headings) {
    const plain = heading.replace(/\s+/g, ' ').trim();
    if (!words.has(closed(plain))) words.set(closed(plain), plain);
  }
  const edits: Edit[] = [];
  for (const { title, from, to } of writtenTitles(text)) {
    const right = headingOf(title, words);
    if (right !== undefined && right !== title) edits.push({ from, to, by: textString(right) });
  }
  return edits.length === 0 ? pdf : new Uint8Array(Buffer.from(spliced(text, edits), 'latin1'));
}

/** Words without their spaces. */
function closed(words: string): string {
  return words.replace(/\s+/g, '');
}

/** The heading that was drawn as `title`, once or several times over; undefined for none. */
function headingOf(title: string, words: ReadonlyMap<string, string>): string | undefined {
  const drawn = closed(title);
  for (let times = 1; times <= drawn.length; times += 1) {
    const once = drawn.slice(0, drawn.length / times);
    if (words.has(once) && once.repeat(times) === drawn) return words.get(once);
  }
  return undefined;
}

interface Edit {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

interface WrittenTitle {
  readonly title: string;
  /** Where its string stands in the file, brackets and all. */
  readonly from: number;
  readonly to: number;
}

/** Outline items name their parent (ISO 32000-1, table 153); the document's own title does not. */
const outlineItem =
  /(?<head>\d+ 0 obj\s*<<\s*\/Title\s*)(?<string>\((?:[^\\()]|\\[\s\S])*\)|<[\dA-Fa-f\s]*>)(?=[^>]*?\/Parent\b)/g;

function writtenTitles(pdf: string): WrittenTitle[] {
  return Array.from(pdf.matchAll(outlineItem), ({ index, groups }) => {
    const { head, string } = groups as { head: string; string: string };
    const from = index + head.length;
    return { title: decoded(string), from, to: from + string.length };
  });
}

const escapes: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** A text string (ISO 32000-1, 7.9.2.2): UTF-16 behind its mark, else one byte a letter. */
function decoded(string: string): string {
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

function textString(words: string): string {
  const hex = Buffer.from(words, 'utf16le').swap16().toString('hex').toUpperCase();
  return `<FEFF${hex}>`;
}

/** The file with its edits made, and every offset that counts its bytes set right. */
function spliced(pdf: string, edits: readonly Edit[]): string {
  const moved = (offset: number) =>
    edits.reduce((at, { from, to, by }) => (from < offset ? at + by.length - (to - from) : at), offset);
  const table = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(pdf)?.[1]);
  if (!pdf.startsWith('xref', table) || /\/(?:Prev|ObjStm|XRefStm)\b/.test(pdf.slice(table)))
    throw new Error('The PDF has no single table of cross-references where one was expected.');
  const tail = pdf
    .slice(table)
    .replace(/^(\d{10})(?= \d{5} n)/gm, (offset) => String(moved(Number(offset))).padStart(10, '0'))
    .replace(/(?<=startxref\s+)\d+/, String(moved(table)));
  let body = '';
  let at = 0;
  for (const { from, to, by } of edits) {
    body += pdf.slice(at, from) + by;
    at = to;
  }
  return body + pdf.slice(at, table) + tail;
}
