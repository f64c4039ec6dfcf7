import { describe, expect, it } from 'vitest';
import { repeatablePdf } from './repeatable-pdf.ts';

const bytes = (text: string) => new Uint8Array(Buffer.from(text, 'latin1'));
const text = (pdf: Uint8Array) => Buffer.from(pdf).toString('latin1');

describe('a repeatable PDF', () => {
  const date = new Date('2031-05-06T07:08:09Z');

  it('bears the date of the inputs, every other byte and the length staying', () => {
    const before =
      "\xe2\xff/CreationDate (D:20260101120000+00'00')\n/ModDate (D:20260101120001+00'00') (D:20260101120000+00'00')\x80";
    const after = repeatablePdf(bytes(before), date);
    expect(after.length).toBe(before.length);
    expect(text(after)).toBe(
      "\xe2\xff/CreationDate (D:20310506070809+00'00')\n/ModDate (D:20310506070809+00'00') (D:20260101120000+00'00')\x80",
    );
  });

  it('counts the names of its table headings from 1, in their order, at every place', () => {
    const before =
      "/CreationDate (D:20260101120000+00'00') (node00000216) (node00001400) (node00000216) node00000216";
    expect(text(repeatablePdf(bytes(before), date))).toBe(
      "/CreationDate (D:20310506070809+00'00') (node00000001) (node00000002) (node00000001) node00000216",
    );
  });

  it('must have a date, in the form expected: else two prints would differ unseen', () => {
    expect(() => repeatablePdf(bytes('%PDF-1.4'), date)).toThrow('no date');
    expect(() => repeatablePdf(bytes('/CreationDate (D:20260101120000Z)'), date)).toThrow('another form');
  });

  /**
   * Headings 20, 8, 130 … in the order of the document, named in the order the browser came to them, in two leaves of
   * the tree.
   */
  function withHeadings(names: readonly number[]): string {
    const node = (number: number) => `(node${String(number).padStart(8, '0')})`;
    const objects = [8, 20, 130, 131, 1400];
    const pairs = names
      .map((name, index) => ({ name, object: objects[index]! }))
      .sort((a, b) => a.name - b.name);
    const leaf = (part: typeof pairs) =>
      `<</Limits [${node(part[0]!.name)} ${node(part.at(-1)!.name)}]\n/Names [${part
        .map(({ name, object }) => `${node(name)} ${object} 0 R`)
        .join(' ')}]>>`;
    const all = `<</Limits [${node(pairs[0]!.name)} ${node(pairs.at(-1)!.name)}]\n/Kids [3 0 R 4 0 R]>>`;
    const bodies = [
      "<</CreationDate (D:20260101120000+00'00')>>",
      all,
      leaf(pairs.slice(0, 2)),
      leaf(pairs.slice(2)),
      names.map((name) => `/ID ${node(name)}`).join(' '),
    ];
    let pdf = '%PDF-1.4\n';
    const offsets = bodies.map((body, index) => {
      const offset = pdf.length;
      pdf += `${index + 1} 0 obj\n${body}\nendobj\n`;
      return offset;
    });
    const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
    return `${pdf}xref\n0 6\n0000000000 65535 f \n${rows}trailer\n<</Size 6>>\nstartxref\n${pdf.length}\n%%EOF\n`;
  }

  it.each([[[11, 12, 13, 14, 15]], [[13, 11, 12, 14, 15]], [[15, 14, 13, 12, 11]], [[99, 5, 700, 6, 7]]])(
    'is the same in whichever order the browser came to the headings (%j)',
    (names) => {
      const pdf = text(repeatablePdf(bytes(withHeadings(names)), date));
      expect(pdf).toBe(text(repeatablePdf(bytes(withHeadings([1, 2, 3, 4, 5])), date)));
      expect(pdf).toContain('/Names [(node00000001) 8 0 R (node00000002) 20 0 R]>>');
      expect(pdf).toContain('/Limits [(node00000003) (node00000005)]');
      expect(pdf).toContain('/ID (node00000001) /ID (node00000002)');
      const rows = [...pdf.slice(pdf.lastIndexOf('\nxref\n')).matchAll(/^(\d{10}) 00000 n/gm)];
      expect(rows).toHaveLength(5);
      for (const [index, [, offset]] of rows.entries())
        expect(pdf.slice(Number(offset)).startsWith(`${index + 1} 0 obj`)).toBe(true);
      const start = Number(/startxref\n(\d+)/.exec(pdf)![1]);
      expect(pdf.slice(start).startsWith('xref')).toBe(true);
    },
  );
});
