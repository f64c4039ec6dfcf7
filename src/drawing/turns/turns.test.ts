import { describe, expect, it } from 'vitest';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { Drawing } from '../kit/drawing.ts';
import { readSvg, svgText } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import { type DrawnTurn, turnsDrawing } from './turns.ts';

const board = createNodeBoard();
const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const turn = (bank: number, radius: number, half: number): DrawnTurn => ({
  bank: (bank * Math.PI) / 180,
  radius,
  heightLost: { half, whole: 2 * half },
});
const three = [turn(20, 130, 66), turn(30, 80, 45), turn(45, 47, 33)];
const draw = (turns: readonly DrawnTurn[], options: object = {}) =>
  turnsDrawing(turns, {
    units: feet,
    board,
    id: 't',
    aircraft: 'Osier 15',
    note: 'In still air at 41 kt.',
    maxWidth: 174,
    maxHeight: 130,
    ...options,
  });
/** The circles of the turns: the heavy lines. */
const circles = (svg: Drawing['svg']) =>
  readSvg(svg)
    .filter(({ name, attributes }) => name === 'circle' && attributes['stroke-width'] === '1.15')
    .map(({ attributes }) => ({
      x: Number(attributes.cx),
      y: Number(attributes.cy),
      r: Number(attributes.r),
    }));

describe('the drawing of turns', () => {
  it('draws each circle at the scale it states', () => {
    const { svg, scale } = draw(three);
    expect(scale).toBe(5000);
    for (const [index, circle] of circles(svg).entries()) {
      expect(circle.r).toBeCloseTo((three[index]!.radius * 1000) / scale, 2);
    }
    expect(circles(svg)).toHaveLength(3);
  });

  it('keeps the circles apart', () => {
    const drawn = circles(draw(three).svg);
    for (const [index, circle] of drawn.slice(1).entries()) {
      const before = drawn[index]!;
      expect(circle.x - circle.r - (before.x + before.r)).toBeGreaterThan(3);
    }
  });

  it('says radius and height lost under each, and in the text', () => {
    const { svg, description } = draw(three);
    expect(plain(svgText(svg))).toContain('>Bank 30°<');
    expect(plain(svgText(svg))).toContain('>radius 80 m<');
    expect(plain(svgText(svg))).toContain('>half a turn: −150 ft<');
    expect(plain(description)).toContain(
      'At 45° of bank: radius 50 m, 110 ft lost in half a turn, 220 ft in a whole one.',
    );
  });

  it('takes a smaller scale in a smaller room, and says so where there is none', () => {
    expect(draw(three, { maxWidth: 110 }).scale).toBe(10_000);
    expect(() => draw(three, { maxHeight: 20 })).toThrow(/no room/);
    expect(() => draw([])).toThrow(/at least one/);
  });

  it('hides nothing under a label', () => {
    for (const turns of [three, three.slice(0, 1), [...three, turn(60, 27, 30), turn(10, 270, 120)]]) {
      expectNothingHidden(draw(turns), board, { lines: [], shapes: ['circles'] });
    }
  });
});
