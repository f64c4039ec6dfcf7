import type { Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { keyNames } from '../../src/words/keys/key-names.ts';
import { contextOf, flyTrial, renderBody } from '../trial-packet.ts';
import { debrief } from './debrief.ts';
import { gradeStandards } from './grade-standards.ts';

const plan = flyTrial();

function form(grading = ['not yet', 'with help', 'alone', 'well']) {
  const context = { ...contextOf(plan), school: { ...contextOf(plan).school, grading } };
  return debrief.render({ attributes: {}, label: '', children: [], ordinal: 1, context });
}
const standards = () =>
  h('section', { className: ['part', 'standards'] }, [
    h('h2', 'Completion standards'),
    h('ul', [h('li', ['From ', h('b', { id: 'once' }, '1,000 ft'), '.']), h('li', [h('p', 'On the spot.')])]),
  ]);
const graded = (html: string) =>
  [...html.matchAll(/<th scope="row" style="font-weight:400">(.*?)<\/th>(.*?)<\/tr>/g)].map((row) => ({
    line: row[1],
    boxes: row[2]!.match(/tick-box/g)?.length,
  }));

describe('::debrief', () => {
  it('has for each key flown the height planned and room to write', () => {
    const { html, messages } = renderBody('::debrief', plan);
    expect(messages).toEqual([]);
    const rows = [
      ...html.matchAll(/<tr><th scope="row">(.*?)<\/th><td class="number">(.*?)<\/td>(.*?)<\/tr>/g),
    ];
    const keys = plan.keys.filter(({ id }) => id !== 'aim-point');
    expect(rows.map((row) => row[1])).toEqual(keys.map(({ id }) => keyNames[id]));
    expect(rows[0]![2]).toBe('1,000 ft');
    for (const row of rows) expect(row[3]!.match(/<td class="to-fill"[^>]*><\/td>/g)).toHaveLength(2);
  });

  it("has the author's own rows where no keys are flown", () => {
    const { html, messages } = renderBody('::debrief{rows="Into the wind; Down the wind"}', plan);
    expect(messages).toEqual([]);
    const rows = [...html.matchAll(/<tr><th scope="row">(.*?)<\/th>(.*?)<\/tr>/g)];
    expect(rows.map((row) => row[1])).toEqual(['Into the wind', 'Down the wind']);
    for (const row of rows) expect(row[2]!.match(/<td class="to-fill"[^>]*><\/td>/g)).toHaveLength(3);
    expect(html).not.toContain('Downwind key');
    expect(html).toContain('Completion standards');
  });

  it("grades by the school's own scale, ours where it has none", () => {
    expect(contextOf(plan).school.grading).toEqual(['not yet', 'with help', 'alone', 'well']);
    const html = toHtml(form(['again', 'good enough', 'good']));
    expect(html).toContain('>good enough</th>');
    expect(graded(html).every(({ boxes }) => boxes === 3)).toBe(true);
    expect(graded(html).length).toBeGreaterThan(3);
  });

  it("takes the lesson's standards, wherever they stand in it", () => {
    for (const children of [
      [standards(), ...form()],
      [...form(), standards()],
    ]) {
      const page: Root = { type: 'root', children };
      gradeStandards(page);
      const html = toHtml(page);
      expect(graded(html)).toEqual([
        { line: 'From <b>1,000 ft</b>.', boxes: 4 },
        { line: 'On the spot.', boxes: 4 },
      ]);
      expect(html.match(/id="once"/g)).toHaveLength(1);
    }
  });

  it('takes them in a lesson by itself, before the form or behind it', () => {
    for (const body of [
      ':::standards\n- On the spot.\n:::\n\n::debrief',
      '::debrief\n\n:::standards\n- On the spot.\n:::',
    ]) {
      const { html, messages } = renderBody(body, plan);
      expect(messages).toEqual([]);
      expect(graded(html)).toEqual([{ line: 'On the spot.', boxes: 4 }]);
    }
  });

  it('takes paragraphs where the standards have no list, and general lines where there are none', () => {
    const page: Root = {
      type: 'root',
      children: [h('section', { className: ['part', 'standards'] }, [h('p', 'Done alone.')]), ...form()],
    };
    gradeStandards(page);
    expect(graded(toHtml(page)).map(({ line }) => line)).toEqual(['Done alone.']);
    const bare: Root = { type: 'root', children: form() };
    const before = toHtml(bare);
    gradeStandards(bare);
    expect(toHtml(bare)).toBe(before);
  });
});
