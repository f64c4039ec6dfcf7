import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::risks', () => {
  it('is a section under its heading, with figures in its text', () => {
    const { html, messages } = renderBody(':::risks\n- From :key[downwind-key].\n:::', plan);
    expect(messages).toEqual([]);
    expect(html.replace(/\n/g, '')).toBe(
      '<section class="part risks"><h2 id="risks-and-how-they-are-managed">Risks and how they are managed</h2><ul><li>From 1,000 ft.</li></ul></section>',
    );
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::risks\n\n:::', plan).messages).toEqual([
      '4:1 `risks` is empty: write its text between `:::risks` and `:::`',
    ]);
  });
});
