import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe('::profile', () => {
  const { html, messages } = renderBody('::profile\n\n::profile', plan);

  it('is a figure with the drawing and a numbered caption', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(/^<figure class="drawing profile" id="profile-1"><svg[^>]*role="img"/);
    expect(html).toContain('>Figure 1</span> 180° approach to runway 24 at Fallow Reach, left-hand');
    expect(html).toContain("Source of the aircraft's figures: Invented for the demonstration.");
  });

  it('has no id twice in the page', () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(html).toContain('>Figure 2</span>');
  });

  it('names in its caption how heights are drawn', () => {
    const times = /heights drawn (\d+) times as large/.exec(html)?.[1];
    expect(html).toContain(`Heights drawn ${times}× as large as distances`);
  });

  it('numbers figures through, whichever drawing they hold', () => {
    const both = renderBody('::pattern\n\n::profile', plan).html;
    expect(both).toMatch(/id="pattern-1".*Figure 1<.*id="profile-1".*Figure 2</s);
  });
});
