import { describe, expect, it } from 'vitest';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import { face, size } from './ink.ts';
import { closeSheet, layer, openSheet } from './sheet.ts';
import { readSvg } from './svg-reading.ts';
import { blockSize, setBlock, setLine, wrapped } from './text.ts';

const board = createNodeBoard();

describe('a text on a drawing', () => {
  it('is broken only where it is wider than its room, and a long word keeps a line', () => {
    const width = board.measure('Ring: where the', 3);
    expect(wrapped(board, 'Ring: where the turn begins', width, 3)).toEqual([
      'Ring: where the',
      'turn begins',
    ]);
    expect(wrapped(board, 'Ring: where the turn begins', width - 0.01, 3)[0]).toBe('Ring: where');
    expect(wrapped(board, 'Incomprehensibilities all', 2, 3)).toEqual(['Incomprehensibilities', 'all']);
  });

  it('takes the width of its widest line and the height of all of them', () => {
    const lines = [{ text: 'Base key' }, { text: 'Base key', bold: true }];
    const one = blockSize(board, lines.slice(0, 1), 4);
    const two = blockSize(board, lines, 4);
    expect(one.width).toBe(board.measure('Base key', 4));
    expect(two.width).toBe(board.measure('Base key', 4, 'bold'));
    expect(one.height).toBeCloseTo(4 * (face.cap + face.descent), 12);
    expect(two.height - one.height).toBeCloseTo(4 * face.leading, 12);
  });

  it('is set line under line, to the side that is asked for', () => {
    const box = { x: 10, y: 20, width: 30, height: 12 };
    const lines = [{ text: 'Base key', bold: true }, { text: '500 ft' }];
    const sheet = openSheet(board, 't', 100, 80);
    for (const align of ['start', 'middle', 'end'] as const)
      setBlock(layer(sheet, align), lines, box, { align, size: 4 });
    setLine(layer(sheet, 'line'), { text: 'N' }, { x: 3, y: 7 });
    const texts = readSvg(closeSheet(sheet, 'Title', 'Words').svg).filter(({ name }) => name === 'text');
    expect(
      texts.map(({ text, attributes }) => [text, Number(attributes.x), attributes['text-anchor']]),
    ).toEqual([
      ['Base key', 10, undefined],
      ['500 ft', 10, undefined],
      ['Base key', 25, 'middle'],
      ['500 ft', 25, 'middle'],
      ['Base key', 40, 'end'],
      ['500 ft', 40, 'end'],
      ['N', 3, undefined],
    ]);
    const [first, second] = texts.map(({ attributes }) => Number(attributes.y));
    expect(first).toBeCloseTo(20 + 4 * face.cap, 2);
    expect(second! - first!).toBeCloseTo(4 * face.leading, 2);
    expect(texts.map(({ attributes }) => attributes['font-weight'])).toEqual([
      ...['600', undefined, '600', undefined, '600', undefined, undefined],
    ]);
    expect(Number(texts.at(-1)!.attributes['font-size'])).toBe(size.label);
  });
});
