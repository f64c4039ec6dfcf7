import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::student-actions', () => {
  it('is a section under its heading, with figures in its text', () => {
    const { html, messages } = renderBody(':::student-actions\n- From :key[downwind-key].\n:::', plan);
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe(
      '<section class="part student-actions"><h2 id="what-the-student-does">What the student does</h2><ul><li>From 1,000 ft.</li></ul></section>',
    );
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::student-actions\n\n:::', plan).messages).toEqual([
      '4:1 `student-actions` is empty: write its text between `:::student-actions` and `:::`',
    ]);
  });
});
