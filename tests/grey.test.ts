import { beforeAll, describe, expect, it } from 'vitest';
import { segmentsOf } from '../src/drawing/kit/geometry.ts';
import { ink, paper } from '../src/drawing/kit/ink.ts';
import { pointsOf } from '../src/drawing/kit/svg-reading.ts';
import {
  type DrawnSheet,
  differInForm,
  differInHueAlone,
  drawingsIn,
  type Look,
  outlinedShare,
} from './drawn-marks.ts';
import { handbookPackets } from './handbook-packets.ts';
import { contrast } from './luminance.ts';
import { type Declaration, pageDeclarations } from './page-rules.ts';

/*
 * A packet is photocopied. Whatever a colour says must be said by something else too: a shape, a width, dashes, or a
 * step of grey (WCAG 2.2, 1.4.1: colour is not the only visual means of conveying information).
 */

/** Together they have every kind of drawing, and faults over a plan. */
const lessons = ['judging-the-glide', 'power-off-180', 'faulty-approaches', 'faulty-landings'];
const kinds = ['pattern', 'profile', 'reach', 'turns', 'round-out', 'final-sight'];

let drawings: readonly DrawnSheet[];
let declarations: readonly Declaration[];

beforeAll(async () => {
  const packets = await handbookPackets(lessons);
  drawings = packets.flatMap(({ html }) => drawingsIn(html));
  declarations = packets.flatMap(({ html }) => pageDeclarations(html));
});

const line = (stroke: string, width: number, dashes = ''): Look => ({
  shape: 'line',
  width,
  dashes,
  stroke,
  fill: undefined,
});
const area = (fill: string): Look => ({ shape: 'area', width: 0, dashes: '', stroke: undefined, fill });

/** The different looks of some marks, each once. */
function looksOf(marks: DrawnSheet['marks']): Look[] {
  return [...new Map(marks.map(({ look }) => [JSON.stringify(look), look])).values()];
}

const inLayer = ({ marks }: DrawnSheet, name: string) =>
  marks.filter(({ within }) => within.some((id) => id.endsWith(`-${name}`)));

describe('two things drawn', () => {
  it('in red and blue of one lightness are the same in grey', () => {
    expect(differInHueAlone(line('#c00000', 0.5), line('#1f5fa8', 0.5))).toBe(true);
    expect(differInHueAlone(area('#ffd0d0'), area('#d0e4ff'))).toBe(true);
  });

  it('are told apart by a width, dashes, a shape or a step of grey', () => {
    const red = line('#c00000', 0.5);
    for (const other of [
      line('#1f5fa8', 1),
      line('#1f5fa8', 0.5, '2 1'),
      line('#e0e0e0', 0.5),
      area('#1f5fa8'),
    ])
      expect(differInHueAlone(red, other)).toBe(false);
    expect(differInForm(line(ink, 0.5, '2 1'), line(ink, 0.5, '4 2'))).toBe(true);
    expect(differInForm(line(ink, 0.5, '2 1'), line(ink, 0.5, '2 1.1'))).toBe(false);
    expect(differInForm(line(ink, 0.5), line(ink, 0.55))).toBe(false);
  });
});

describe('a drawing in grey', () => {
  it('of every kind is looked at, with a fault flown in one', () => {
    const found = new Set(drawings.map(({ id }) => id.replace(/-\d+-drawing$/, '')));
    expect([...found].sort()).toEqual([...kinds].sort());
    expect(drawings.some((drawing) => inLayer(drawing, 'faults').length > 0)).toBe(true);
    expect(Math.min(...drawings.map(({ marks }) => marks.length))).toBeGreaterThan(5);
  });

  it('has no two marks that differ in hue alone', () => {
    for (const { id, marks } of drawings) {
      const looks = looksOf(marks);
      for (const [index, one] of looks.entries())
        for (const other of looks.slice(index + 1))
          expect(differInHueAlone(one, other), `${id}: ${JSON.stringify([one, other])}`).toBe(false);
    }
  });

  it('has dashes of its own for each kind of dashed line, or another width', () => {
    for (const { id, marks } of drawings) {
      const dashed = looksOf(marks.filter(({ look }) => look.dashes !== ''));
      for (const [index, one] of dashed.entries())
        for (const other of dashed.slice(index + 1))
          expect(differInForm(one, other), `${id}: ${JSON.stringify([one, other])}`).toBe(true);
    }
  });

  it('keeps what its legend says of heavy and dashed lines', () => {
    let heavy = 0;
    let dashed = 0;
    for (const drawing of drawings) {
      const widths = inLayer(drawing, 'track')
        .filter(({ name, look }) => name === 'path' && look.shape === 'line')
        .map(({ look }) => look.width);
      if (/Heavy line/.test(drawing.words)) {
        heavy += 1;
        expect(Math.max(...widths) / Math.min(...widths), drawing.id).toBeGreaterThan(1.5);
      }
      if (!/Dashed: a fault flown/.test(drawing.words)) continue;
      dashed += 1;
      const flown = inLayer(drawing, 'faults').filter(({ name }) => name === 'path');
      expect(flown.length, drawing.id).toBeGreaterThan(0);
      for (const { look } of flown) {
        expect(look.dashes, drawing.id).not.toBe('');
        for (const plan of looksOf(inLayer(drawing, 'track'))) expect(differInForm(look, plan)).toBe(true);
      }
    }
    expect(heavy).toBeGreaterThan(2);
    expect(dashed).toBeGreaterThan(0);
  });

  it('has a line around every area too pale to be seen by itself', () => {
    let pale = 0;
    for (const { id, marks } of drawings) {
      const lines = marks
        .filter(({ look }) => look.stroke !== undefined && contrast(look.stroke, paper) >= 3)
        .flatMap((mark) => {
          const points = pointsOf(mark);
          const closes = mark.attributes.d?.trim().endsWith('Z');
          return segmentsOf(closes ? [...points, points[0]!] : points);
        });
      for (const mark of marks) {
        const { shape, fill, stroke } = mark.look;
        if (
          (shape !== 'area' && shape !== 'box') ||
          fill === undefined ||
          fill === paper ||
          contrast(fill, paper) >= 3
        )
          continue;
        pale += 1;
        if (stroke === undefined)
          expect(outlinedShare(mark, lines), `${id}, ${mark.within}`).toBeGreaterThan(0.5);
        else expect(contrast(stroke, paper), `${id}, ${mark.within}`).toBeGreaterThanOrEqual(3);
      }
    }
    expect(pale).toBeGreaterThan(5);
  });
});

describe('a page in grey', () => {
  it('has links that are underlined, as a browser underlines them', () => {
    const links = declarations.filter(
      ({ selector, property }) =>
        /(^|[\s,}>])a\b(?![\w-])/.test(selector) && /^text-decoration(-line)?$/.test(property),
    );
    for (const { value } of links) expect(value).toMatch(/underline/);
    expect(declarations).toContainEqual({ selector: 'a', property: 'color', value: 'inherit' });
  });

  it('has no rule that says something by a colour of text or ground alone', () => {
    const rules = new Map<string, Declaration[]>();
    for (const each of declarations) rules.set(each.selector, [...(rules.get(each.selector) ?? []), each]);
    const plain = /^(#000(000)?|#fff(fff)?|inherit|transparent|none|currentcolor)$/i;
    const beside = /^(border|outline|font|text-decoration|content|list-style)/;
    for (const [selector, rule] of rules) {
      const coloured = rule.filter(
        ({ property, value }) => /^(color|background(-color)?)$/.test(property) && !plain.test(value),
      );
      if (coloured.length === 0) continue;
      expect(
        rule.some(({ property }) => beside.test(property)),
        selector,
      ).toBe(true);
    }
  });
});
