import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe(':::caution', () => {
  it('is a box with the word in sight, not by its look alone', () => {
    const { html, messages } = renderBody(':::caution\nNot above :wind[speed].\n:::', plan);
    expect(messages).toEqual([]);
    expect(html).toBe(
      '<div class="caution" role="note" aria-label="Caution"><p class="label">Caution</p><p>Not above 10 kt.</p></div>',
    );
  });

  it('stands inside a part with a longer fence', () => {
    const { html, messages } = renderBody('::::objective\na\n\n:::caution\nb\n:::\n::::', plan);
    expect(messages).toEqual([]);
    expect(html).toMatch(/<section.*<div class="caution".*<\/div><\/section>/s);
  });

  it('is an error where it is empty', () => {
    expect(renderBody(':::caution\n:::', plan).messages).toEqual([
      expect.stringMatching(/^4:1 `caution` is empty/),
    ]);
  });
});
