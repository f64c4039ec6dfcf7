import type { Element } from 'hast';
import { h, s } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { papers } from '../paper/paper.ts';
import { documentText } from './text.ts';

function text(...content: Element[]): string {
  const page = { title: 'T', css: '', body: h('body', content), paper: papers.A4, date: new Date(0) };
  return documentText(page).replace('T\n=\n\n', '').trimEnd();
}
const row = (...cells: string[]) =>
  h('tr', [h('th', cells[0]!), ...cells.slice(1).map((cell) => h('td', cell))]);

describe('plain text', () => {
  it('wraps paragraphs at 78 signs, and no number from its unit', () => {
    const lines = text(h('p', `${'abc '.repeat(18)}at 41\u00a0kt and on`)).split('\n');
    expect(lines).toEqual([`${'abc '.repeat(18)}at`.trim(), '41 kt and on']);
  });

  it('underlines headings, and marks lists by sign, number and letter', () => {
    expect(text(h('h2', 'Head'), h('ul', [h('li', 'one')]))).toBe('Head\n----\n\n- one');
    expect(text(h('ol', [h('li', 'x'), h('li', 'y')]))).toBe('1. x\n2. y');
    expect(text(h('ol', { type: 'a' }, [h('li', 'x'), h('li', 'y')]))).toBe('a. x\nb. y');
  });

  it('sets a table in columns, its numbers at their right edge', () => {
    const number = (name: string, value: string) =>
      h('tr', [h('th', name), h('td', { class: 'number' }, value)]);
    expect(text(h('table', [number('Base key', '670 ft'), number('Key', '1,000 ft')]))).toBe(
      'Base key    670 ft\nKey       1,000 ft',
    );
  });

  it('sets what is wider as one block a row, with the names of the columns', () => {
    const table = h('table', [
      h('caption', 'Keys'),
      h('thead', [row('At', 'Height', 'Where')]),
      h('tbody', [row('Base key', '670 ft', 'far '.repeat(20).trim())]),
      h('tbody', [h('tr', h('td', { colSpan: 3 }, 'Flown: short.'))]),
    ]);
    expect(text(table)).toBe(
      `Keys\n\nBase key\n  Height: 670 ft\n  Where: ${'far '.repeat(17).trim()}\n    far far far\n  Flown: short.`,
    );
  });

  it('gives cells that span rows and columns their place', () => {
    const table = h('table', [
      h('tr', [h('th', { rowSpan: 2 }, 'Key'), h('th', { colSpan: 2 }, 'Idling')]),
      h('tr', [h('th', 'from'), h('th', 'to')]),
      h('tr', [h('th', 'Base'), h('td', { colSpan: 2 }, '520 m past')]),
    ]);
    expect(text(table)).toBe('Key   Idling\n      from  to\nBase  520 m past');
  });

  it('says a drawing in its words, and nothing of scripts and ruled lines', () => {
    const drawing = s('svg', [s('title', 'Pattern'), s('desc', 'Key: 670 ft.'), s('text', 'label')]);
    const silent = [h('script', 'x'), h('div', { ariaHidden: 'true' }, 'lines')];
    expect(text(h('figure', [drawing]), ...silent)).toBe('Drawing: Pattern. Key: 670 ft.');
  });

  it('raises a figure, and says a power and a footnote that have no sign', () => {
    const raised = h('p', ['m', h('sup', '2'), ' h', h('sup', 'α'), ' so', h('sup', h('a', '3'))]);
    expect(text(raised)).toBe('m² h^α so [3]');
  });
});
