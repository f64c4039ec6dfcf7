import { describe, expect, it } from 'vitest';
import { readPdf } from '../../../tests/pdf-reader.ts';
import { outlineTitles } from './outline-titles.ts';

/** A PDF of one empty page with these outline items, their strings as given; built the way Chromium builds one. */
function pdfWith(titles: readonly string[]): Uint8Array {
  const first = 6;
  const items = titles.map((title, index) => {
    const beside = [
      index > 0 ? `\n/Prev ${first + index - 1} 0 R` : '',
      index < titles.length - 1 ? `\n/Next ${first + index + 1} 0 R` : '',
    ];
    return `<</Title ${title}\n/Dest [3 0 R /XYZ 0 ${700 - index} 0]\n/Parent 4 0 R${beside.join('')}>>`;
  });
  const objects = [
    '<</Title (TwiceTwice)\n/Creator (a test)>>',
    '<</Type /Pages\n/Kids [3 0 R]\n/Count 1>>',
    '<</Type /Page\n/Parent 2 0 R\n/MediaBox [0 0 595 842]>>',
    `<</Type /Outlines\n/First ${first} 0 R\n/Last ${first + titles.length - 1} 0 R\n/Count ${titles.length}>>`,
    '<</Type /Catalog\n/Pages 2 0 R\n/Outlines 4 0 R>>',
    ...items,
    '<</Kind (behind the outline)>>',
  ];
  let text = '%PDF-1.4\n';
  const offsets = objects.map((body, index) => {
    const at = text.length;
    text += `${index + 1} 0 obj\n${body}\nendobj\n`;
    return at;
  });
  const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  const table = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows}`;
  const trailer = `trailer\n<</Size ${objects.length + 1}\n/Root 5 0 R\n/Info 1 0 R>>`;
  return Buffer.from(`${text}${table}${trailer}\nstartxref\n${text.length}\n%%EOF\n`, 'latin1');
}

const titlesAfter = async (titles: readonly string[], headings: readonly string[]) =>
  (await readPdf(outlineTitles(pdfWith(titles), headings))).bookmarks;

/** The objects at the places that the cross-reference table names. A PDF reader silently repairs a wrong table. */
function objectsAt(pdf: Uint8Array): string[] {
  const text = Buffer.from(pdf).toString('latin1');
  const table = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(text)?.[1]);
  expect(text.slice(table, table + 5)).toBe('xref\n');
  return [...text.slice(table).matchAll(/^(\d{10}) \d{5} n/gm)].map(([, offset]) =>
    text.slice(Number(offset)).split(' ', 1).join(),
  );
}

describe('the bookmarks of a printed page', () => {
  it('lose what was drawn twice, or three times', async () => {
    const drawn = ['(What the flight gaveWhat the flight gave)', '(GatesGatesGates)', '(Questions)'];
    const headings = ['What the flight gave', 'Gates', 'Questions'];
    expect(await titlesAfter(drawn, headings)).toEqual(headings);
  });

  it('regain the space at which the heading turned to its next line', async () => {
    const drawn = ['(The quarter-circuitpower-off approach)', '(One twothree fourOne twothree four)'];
    const headings = ['The quarter-circuit power-off\n approach', 'One two three four'];
    expect(await titlesAfter(drawn, headings)).toEqual([
      'The quarter-circuit power-off approach',
      'One two three four',
    ]);
  });

  it('keep a word that is said twice in the heading itself', async () => {
    expect(await titlesAfter(['(Down, down)', '(GoGo)'], ['Down, down', 'GoGo', 'Go'])).toEqual([
      'Down, down',
      'GoGo',
    ]);
  });

  it('are read with brackets, octal and in UTF-16 (ISO 32000-1, 7.3.4 and 7.9.2.2)', async () => {
    const utf16 = (words: string) => `<FEFF${Buffer.from(words, 'utf16le').swap16().toString('hex')}>`;
    const headings = ['Height (ft) \\ spot', 'Over', '30° – 60° bank', 'Über 30 m'];
    const drawn = [
      '(Height \\(ft\\) \\\\spot)',
      '(\\117ver\\117ver)',
      utf16('30° – 60°bank'),
      utf16('Über30 mÜber30 m'),
    ];
    expect(await titlesAfter(drawn, headings)).toEqual(headings);
  });

  it('that are no heading of the document stay as they are, byte for byte', () => {
    const pdf = pdfWith(['(TickTick)', '(Right)']);
    expect(outlineTitles(pdf, ['Right', 'Other'])).toBe(pdf);
  });

  it("leave the document's own title alone, which is no bookmark", async () => {
    expect((await readPdf(outlineTitles(pdfWith(['(A)']), ['Twice', 'A']))).title).toBe('TwiceTwice');
  });

  it('leave every object where the table of cross-references says it is', () => {
    const pdf = pdfWith(['(OneOne)', '(Twothree)', '(Four)', '(FiveFiveFive)']);
    const right = outlineTitles(pdf, ['One', 'Two three', 'Four', 'Five']);
    expect(right.length).not.toBe(pdf.length);
    const numbers = Array.from({ length: 10 }, (_, index) => String(index + 1));
    expect(objectsAt(pdf)).toEqual(numbers);
    expect(objectsAt(right)).toEqual(numbers);
    expect(outlineTitles(right, ['One', 'Two three', 'Four', 'Five'])).toBe(right);
  });

  it('are not guessed in a PDF that is built otherwise', () => {
    const text = Buffer.from(pdfWith(['(OneOne)'])).toString('latin1');
    for (const other of [
      text.replace('/Root', '/Prev 9\n/Root'),
      text.replace(/startxref\n\d+/, 'startxref\n7'),
    ])
      expect(() => outlineTitles(Buffer.from(other, 'latin1'), ['One'])).toThrow(
        'no single table of cross-references',
      );
  });
});
