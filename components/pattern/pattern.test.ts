import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe('::pattern', () => {
  const { html, messages } = renderBody('::pattern\n\n::pattern', plan);

  it('is a figure with the drawing and a numbered caption', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(/^<figure class="drawing pattern" id="pattern-1"><svg[^>]*role="img"/);
    expect(html).toContain('>Figure 1</span> 180° approach to runway 24 at Fallow Reach, left-hand');
    expect(html).toContain("Source of the aircraft's figures: Invented for the demonstration.");
  });

  it('has no id twice in the page', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(html).toContain('>Figure 2</span>');
  });

  it('names in its caption the scale that is drawn', () => {
    const scale = /seen from above, scale (1:[\d,]+)\./.exec(html)?.[1];
    expect(html).toContain(`Scale ${scale}<`);
  });
});
