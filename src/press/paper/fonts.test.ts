import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { faces, fontconfigPath, fontFaceCss } from './fonts.ts';

/**
 * Characters that a page of figures uses: limits, roots, arrows, degrees, feet and inches, real minus, ratio, dashes,
 * Greek letters of formulas.
 */
const signs = '≤≥√→≈°′″−×·–—±½²³γφρσπ…“”‘’';

function open(path: string): fontkit.Font {
  const font = fontkit.create(readFileSync(path));
  if (!('layout' in font)) throw new Error(`${path} is a collection, not one font`);
  return font;
}

describe.each(Object.entries(faces))('the %s face', (_name, face) => {
  const font = open(face.path);

  it('is the family and the cut that the style sheet says', () => {
    expect(font.familyName).toContain(face.family);
    expect(font['OS/2'].usWeightClass).toBe(face.weight);
    expect(font.italicAngle !== 0).toBe(face.style === 'italic');
  });

  it('is static, so that a PDF embeds outlines and not Type 3 drawings', () => {
    expect(Object.keys(font.variationAxes)).toEqual([]);
  });

  it.each([...signs])('has %s', (sign) => {
    expect(font.hasGlyphForCodePoint(sign.codePointAt(0)!)).toBe(true);
  });

  it('has figures of one width, so that columns of numbers stand true', () => {
    const widths = [...'0123456789'].map((figure) => font.layout(figure).advanceWidth);
    expect(new Set(widths).size).toBe(1);
  });
});

describe('the fonts of a page', () => {
  it('travel inside it', () => {
    const css = fontFaceCss();
    expect(css.match(/@font-face/g)).toHaveLength(Object.keys(faces).length);
    expect(css.match(/url\((?!data:)/)).toBeNull();
  });

  it('are found by a browser whose font finder reads no woff2: one face lies there unpacked', () => {
    const unpacked = open(join(dirname(faces.sans.path), 'IBMPlexSans-Regular.ttf'));
    const packed = open(faces.sans.path);
    expect(unpacked.type).toBe('TTF');
    expect(unpacked.version).toBe(packed.version);
    expect(unpacked.numGlyphs).toBe(packed.numGlyphs);
  });

  it('come with their licence, and with a fontconfig file that finds them', () => {
    expect(readFileSync(join(dirname(faces.sans.path), 'OFL.txt'), 'utf8')).toContain(
      'SIL OPEN FONT LICENSE Version 1.1',
    );
    expect(dirname(fontconfigPath)).toBe(dirname(faces.sans.path));
    expect(readFileSync(fontconfigPath, 'utf8')).toContain('<dir prefix="relative">.</dir>');
  });
});
