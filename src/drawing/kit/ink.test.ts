import { describe, expect, it } from 'vitest';
import { faint, ink, paper, size, tint } from './ink.ts';

/** Relative luminance and contrast ratio as WCAG 2.2 defines them (Terms and definitions). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
const contrast = (a: string, b: string) => {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
};

describe('the ink', () => {
  it('has the contrast of WCAG 2.2: 4.5:1 for text (1.4.3), 3:1 for lines (1.4.11), on paper and on a tint', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    for (const ground of [paper, tint]) {
      expect(contrast(ink, ground)).toBeGreaterThan(7);
      expect(contrast(faint, ground)).toBeGreaterThan(4.5);
    }
  });

  it('sets the lines that say how to read a drawing in at least 7.5 points', () => {
    expect((size.note / 25.4) * 72).toBeGreaterThanOrEqual(7.5);
  });

  it('sets no text smaller than 7 points', () => {
    for (const mm of Object.values(size)) expect((mm / 25.4) * 72).toBeGreaterThanOrEqual(7);
  });
});
