import { describe, expect, it } from 'vitest';
import { faint, ink, paper, tint } from '../src/drawing/ink.ts';

/** Relative luminance of an sRGB colour `#rrggbb` (WCAG 2.2, W3C Recommendation 2023, definition of relative luminance). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

// WCAG 2.2: 1.4.3 asks 4.5:1 of text, 1.4.11 asks 3:1 of what a drawing needs to be understood.
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
  });
});
