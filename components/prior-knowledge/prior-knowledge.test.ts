import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::prior-knowledge', () => {
  it('is a section under its heading, with figures in its text', () => {
    const { html, messages } = renderBody(':::prior-knowledge\n- From :key[downwind-key].\n:::', plan);
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe(
      '<section class="part prior-knowledge"><h2 id="prior-knowledge">Prior knowledge</h2><ul><li>From 1,000 ft.</li></ul></section>',
    );
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::prior-knowledge\n\n:::', plan).messages).toEqual([
      '4:1 `prior-knowledge` is empty: write its text between `:::prior-knowledge` and `:::`',
    ]);
  });
});
