import { type Edit, pdfOfText, pdfString, stringOf, textOfPdf, withEdits, wordsOf } from './pdf-bytes.ts';

/**
 * Gives the bookmarks of a printed PDF the words of their headings. A browser writes into a bookmark what it drew of
 * the heading: without the space at which the heading breaks into its next line, and twice where its letters reach
 * over the upper edge of their page. A title that is not a heading of the document stays as it is. Throws where the
 * PDF is not built as Chromium builds it.
 */
export function outlineTitles(pdf: Uint8Array, headings: readonly string[]): Uint8Array {
  const text = textOfPdf(pdf);
  const words = new Map<string, string>();
  for (const heading of headings) {
    const plain = heading.replace(/\s+/g, ' ').trim();
    if (!words.has(closed(plain))) words.set(closed(plain), plain);
  }
  const edits: Edit[] = [];
  for (const { title, from, to } of writtenTitles(text)) {
    const right = headingOf(title, words);
    if (right !== undefined && right !== title) edits.push({ from, to, by: stringOf(right) });
  }
  return edits.length === 0 ? pdf : pdfOfText(withEdits(text, edits));
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

interface WrittenTitle {
  readonly title: string;
  /** Where its string is in the file, brackets included. */
  readonly from: number;
  readonly to: number;
}

/** Outline items name their parent (ISO 32000-1, table 153); the document's own title does not. */
const outlineItem = new RegExp(
  String.raw`(?<head>\d+ 0 obj\s*<<\s*\/Title\s*)(?<string>${pdfString})(?=[^>]*?\/Parent\b)`,
  'g',
);

function writtenTitles(pdf: string): WrittenTitle[] {
  return Array.from(pdf.matchAll(outlineItem), ({ index, groups }) => {
    const { head, string } = groups as { head: string; string: string };
    const from = index + head.length;
    return { title: wordsOf(string), from, to: from + string.length };
  });
}
