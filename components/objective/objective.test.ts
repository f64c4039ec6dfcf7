import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::objective', () => {
  it('is a section under its heading, with figures in its text', () => {
    const { html, messages } = renderBody(':::objective\n- From :key[downwind-key].\n:::', plan);
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe(
      '<section class="part objective"><h2 id="objective">Objective</h2><ul><li>From 1,000 ft.</li></ul></section>',
    );
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::objective\n\n:::', plan).messages).toEqual([
      '4:1 `objective` is empty: write its text between `:::objective` and `:::`',
    ]);
  });
});
