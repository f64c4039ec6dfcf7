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
});
