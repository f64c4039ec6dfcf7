import { describe, expect, it } from 'vitest';
import { pdfOfText, stringOf, textOfPdf, withEdits, wordsOf } from './pdf-bytes.ts';

const written = `%PDF-1.4
1 0 obj
<</A (short)>>
endobj
2 0 obj
<</B (other)>>
endobj
xref
0 3
0000000000 65535 f 
0000000009 00000 n 
0000000039 00000 n 
trailer
<</Size 3>>
startxref
69
%%EOF
`;

describe('an edit', () => {
  const at = (words: string, by: string) => {
    const from = written.indexOf(words);
    return { from, to: from + words.length, by };
  };

  it('moves the offsets of what stands behind it, and of no more', () => {
    const grown = withEdits(written, [at('(short)', '(a longer one)')]);
    expect(grown).toContain('<</A (a longer one)>>');
    expect(grown).toMatch(/^0000000000 65535 f \n0000000009 00000 n \n0000000046 00000 n /m);
    expect(grown).toContain('startxref\n76\n');
    expect(grown.slice(46)).toMatch(/^2 0 obj/);
    expect(grown.slice(76)).toMatch(/^xref/);
    const both = withEdits(written, [at('(short)', '()'), at('(other)', '(x)')]);
    expect(both.slice(34)).toMatch(/^2 0 obj\n<<\/B \(x\)/);
    expect(both).toContain('startxref\n60\n');
    expect(both.slice(60)).toMatch(/^xref/);
  });

  it('of the same length needs no table; another one is refused without a single one', () => {
    expect(withEdits('(abc) (def)', [{ from: 6, to: 11, by: '(xyz)' }])).toBe('(abc) (xyz)');
    for (const pdf of [
      '(abc)',
      written.replace('/Size', '/Prev 9 /Size'),
      written.replace('\n69\n', '\n68\n'),
    ])
      expect(() => withEdits(pdf, [{ from: 0, to: 1, by: '' }])).toThrow('no single table');
  });
});

it('bytes come back from their text as they were', () => {
  const bytes = Uint8Array.from({ length: 256 }, (_, index) => index);
  expect(pdfOfText(textOfPdf(bytes))).toEqual(bytes);
});

it('words come back from their string as they were, beyond the first 65 536 signs too', () => {
  for (const words of ['', 'Height (ft) \\ spot', '30° – 60°', '𝛼'])
    expect(wordsOf(stringOf(words))).toBe(words);
});
