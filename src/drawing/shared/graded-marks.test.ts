import { describe, expect, it } from 'vitest';
import type { Caution } from '../../flight/terms/caution.ts';
import { gradeOf } from '../../flight/terms/grade.ts';
import type { KeyId } from '../../flight/terms/key.ts';
import type { Plan } from '../../flight/terms/plan.ts';
import { createNodeBoard } from '../../press/printing/node-board.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import type { Drawing } from '../kit/drawing.ts';
import { readSvg, svgText, textsOf } from '../kit/svg-reading.ts';
import { expectNothingHidden } from '../labels/nothing-hidden.ts';
import { patternDrawing } from '../pattern/pattern.ts';
import { profileDrawing } from '../profile/profile.ts';
import { drawnPattern } from './test-plans.ts';

const board = createNodeBoard();
const units: PageUnits = { height: 'ft', distance: 'm', speed: 'kt' };
const plain = drawnPattern({
  circuit: 'left',
  spacing: 400,
  pastAbeam: 220,
  radius: 90,
  height: 304.8,
});

function withCautions(...graded: readonly (readonly [KeyId | undefined, Caution['grade']])[]): Plan {
  const cautions = graded.map(
    ([at, grade]): Caution => ({
      ...{ code: 'final-turn-low', grade, at, value: 1, limit: 2, source: 'flown' },
    }),
  );
  return { ...plain, cautions, grade: gradeOf(cautions) };
}

const drawings = {
  pattern: (plan: Plan) => patternDrawing(plan, { units, board, id: 'd', maxWidth: 174, maxHeight: 160 }),
  profile: (plan: Plan) => profileDrawing(plan, { units, board, id: 'd', maxWidth: 174, maxHeight: 80 }),
};

/** Squares in the drawing: grade, middle and weight. */
function squares(svg: Drawing['svg']) {
  return readSvg(svg)
    .filter(({ attributes }) => attributes['data-grade'])
    .map(({ attributes: { x, y, width, 'stroke-width': weight, 'data-grade': grade, fill } }) => ({
      ...{ grade, fill, weight: Number(weight) },
      middle: { x: Number(x) + Number(width) / 2, y: Number(y) + Number(width) / 2 },
    }));
}

describe.each(Object.entries(drawings))('a %s', (name, draw) => {
  const groups =
    name === 'pattern'
      ? { lines: ['d-track', 'd-dimensions'], shapes: ['d-marks'] }
      : { lines: ['d-track'], shapes: ['d-marks'] };

  it('has no square where no limit is passed, nor for what is only worth knowing', () => {
    const { svg } = draw(plain);
    expect(squares(svg)).toEqual([]);
    expect(svgText(svg)).not.toMatch(/square|not to be flown|beyond a limit/);
    const known = draw(withCautions(['final', 'worth-knowing'])).svg;
    expect(squares(known)).toEqual([]);
  });

  it('marks a key by a square about it, the heavier the graver, and says in words what it means', () => {
    const plan = withCautions(['final', 'not-to-be-flown'], ['base-key', 'beyond-good-practice']);
    const drawing = draw(plan);
    const found = squares(drawing.svg);
    expect(found.map(({ grade }) => grade).sort()).toEqual(['beyond-good-practice', 'not-to-be-flown']);
    const [grave, lighter] = ['not-to-be-flown', 'beyond-good-practice'].map(
      (grade) => found.find((each) => each.grade === grade)!,
    );
    expect(grave!.weight).toBeGreaterThan(2 * lighter!.weight);
    expect(found.map(({ fill }) => fill)).toEqual(['none', 'none']);
    // In the middle of each stands the ring of the key.
    for (const { middle } of found) {
      const ring = readSvg(drawing.svg).find(
        ({ name, attributes }) =>
          name === 'circle' &&
          Math.hypot(Number(attributes.cx) - middle.x, Number(attributes.cy) - middle.y) < 0.01,
      );
      expect(ring).toBeDefined();
    }
    const words = textsOf(drawing.svg, board);
    expect(words.find(({ text }) => text === 'not to be flown')?.bold).toBe(true);
    expect(words.some(({ text }) => text === 'beyond a limit')).toBe(true);
    const note = words.map(({ text }) => text).join(' ');
    expect(note).toContain('Heavy square: not to be flown. Thin square: beyond a limit of good practice.');
    expect(drawing.description).toContain(
      'Not to be flown: The turn to final is complete at 3 ft; it should be complete at 7 ft or higher.',
    );
    expectNothingHidden(drawing, board, groups);
  });

  it('says nothing of a square that it has not', () => {
    const { svg } = draw(withCautions(['final', 'beyond-good-practice']));
    const note = textsOf(svg, board)
      .map(({ text }) => text)
      .join(' ');
    expect(note).toContain('Thin square: beyond a limit');
    expect(note).not.toContain('Heavy square');
  });

  it('has room for a mark at every key', () => {
    const all = plain.keys.map(({ id }) => [id, 'not-to-be-flown'] as const);
    const drawing = draw(withCautions(...all));
    expect(squares(drawing.svg)).toHaveLength(plain.keys.length);
    expectNothingHidden(drawing, board, groups);
  });
});
