import { beforeAll, describe, expect, it } from 'vitest';
import { faint, ink, paper, tint } from '../src/drawing/kit/ink.ts';
import { handbookPackets } from './handbook-packets.ts';
import { contrast, lightness } from './luminance.ts';
import { type ColourUse, coloursIn, colourUse, type Declaration, pageDeclarations } from './page-rules.ts';

// WCAG 2.2: 1.4.3 asks for 4.5:1 in text, 1.4.11 for 3:1 in what a drawing needs to be understood.
describe('the contrast of the drawings', () => {
  it('is 21:1 between black and white, the highest there is', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  });

  it.each([
    ['ink on paper', ink, paper],
    ['faint on paper', faint, paper],
    ['ink on a tint', ink, tint],
    ['faint on a tint', faint, tint],
  ])('is enough for text, and so for lines: %s', (_, over, under) => {
    expect(contrast(over, under)).toBeGreaterThanOrEqual(4.5);
  });

  it('is not between colours alone: ink and faint differ in grey, too', () => {
    for (const colour of [ink, faint, tint]) {
      const parts = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
      expect(Math.max(...parts) - Math.min(...parts)).toBeLessThan(16);
    }
    expect(contrast(ink, faint)).toBeGreaterThan(2);
    expect(lightness(faint) - lightness(ink)).toBeGreaterThan(20);
  });
});

describe('the contrast of the page around them', () => {
  // Together they have notes, cards, tables, lists to tick, exercises, and both editions.
  const lessons = ['judging-the-glide', 'power-off-180'];
  /** Lines that may be fainter, because nothing is lost without them. */
  const decoration: readonly string[] = [
    // Lines to write on in the student's margin: a hand writes just as well without them.
    '.ruled-margin>span',
  ];

  let all: readonly Declaration[];
  /** Without what is printed white on black, which is examined separately. */
  let declarations: readonly Declaration[];
  beforeAll(async () => {
    all = (await handbookPackets(lessons)).flatMap(({ html }) => pageDeclarations(html));
    declarations = all.filter((each) => !(reversed(each) && /^(color|background)$/.test(each.property)));
  });

  /** A rule that reverses black on white: the bands and marks of a plan's grade. */
  const reversed = ({ selector }: Declaration) => {
    const of = (name: string) =>
      all.find((each) => each.selector === selector && each.property === name)?.value;
    return of('background') === '#000' && of('color') === '#fff';
  };

  it('is turned round only with both its colours, in the bands and marks of grades', () => {
    const turned = [...new Set(all.filter(reversed).map(({ selector }) => selector))];
    expect(turned.length).toBeGreaterThan(2);
    for (const selector of turned) expect(selector).toMatch(/grade-|page-band/);
    const white = all.filter(({ property, value }) => property === 'color' && value === '#fff');
    expect(white.every(reversed)).toBe(true);
  });

  const used = (use: ColourUse, of = declarations) =>
    [...new Set(of.filter((each) => colourUse(each) === use).flatMap(coloursIn))].sort();
  const isDecoration = ({ selector }: Declaration) => decoration.some((each) => selector.endsWith(each));

  it('is reckoned from every colour written in a page, and none is written in words or otherwise', () => {
    expect(declarations.length).toBeGreaterThan(300);
    for (const each of declarations) {
      const { selector, property, value } = each;
      const where = `${selector}{${property}:${value}}`;
      if (colourUse(each) === undefined) {
        // Margin boxes have texts of their own, which may contain a number sign.
        if (property !== 'content')
          expect(value, where).not.toMatch(/#[\da-f]{3,8}\b|(?:rgb|hsl|lab|lch|color)a?\(/i);
        continue;
      }
      const rest = value
        .replace(/#[\da-f]{3,6}\b/gi, '')
        .replace(
          /\b(?:inherit|transparent|none|solid|dashed|collapse|underline|line-through)\b|-?[\d.]+[a-z]*/g,
          '',
        );
      expect(rest.trim(), where).toBe('');
    }
  });

  it('is enough for any text on any ground of the page', () => {
    const [texts, grounds] = [used('text'), used('background')];
    expect(texts).toContain('#000000');
    expect(grounds).toContain('#ffffff');
    for (const text of texts)
      for (const ground of grounds)
        expect(contrast(text, ground), `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
  });

  it('is enough for every line that means something on any ground of the page', () => {
    const lines = used(
      'line',
      declarations.filter((each) => !isDecoration(each)),
    );
    expect(lines).toContain('#000000');
    for (const line of lines)
      for (const ground of used('background'))
        expect(contrast(line, ground), `${line} on ${ground}`).toBeGreaterThanOrEqual(3);
  });

  it('is left open only where the page has such a line', () => {
    for (const each of decoration)
      expect(
        declarations.some(({ selector }) => selector.endsWith(each)),
        each,
      ).toBe(true);
  });
});
