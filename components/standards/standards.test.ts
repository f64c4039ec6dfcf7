import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::standards', () => {
  it('is a section under its heading, with figures in its text', () => {
    const { html, messages } = renderBody(':::standards\n- From :key[downwind-key].\n:::', plan);
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe(
      '<section class="part standards"><h2 id="completion-standards">Completion standards</h2><ul><li>From 1,000 ft.</li></ul></section>',
    );
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::standards\n\n:::', plan).messages).toEqual([
      '4:1 `standards` is empty: write its text between `:::standards` and `:::`',
    ]);
  });
});
