import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe('::round-out', () => {
  const { html, messages } = renderBody('::round-out\n\n::round-out', plan);

  it('is a figure with the drawing and a numbered caption', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(/^<figure class="drawing round-out" id="round-out-1"><svg[^>]*role="img"/);
    expect(html).toContain(
      '>Figure 1</span> Round-out and hold-off, 180° approach to runway 24 at Fallow Reach',
    );
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('names in its caption how heights are drawn', () => {
    const times = /heights drawn (\d+) times as large/.exec(html)?.[1];
    expect(html).toContain(`Heights drawn ${times}× as large as distances`);
  });

  it('says the heights and speeds that were flown', () => {
    const knots = (sample: { eas: number }) => Math.round((sample.eas * 3600) / 1852);
    expect(html).toContain('The round-out begins at 12 ft,');
    expect(html).toContain(`The wheels touch at the spot at ${knots(plan.track.at(-1)!)} kt.`);
    expect(html).toMatch(/takes \d+ % of the induced drag away, \d+ % at touchdown/);
  });

  it('says what to do where the flight has no round-out', () => {
    const none = flyTrial({ height: 90 });
    expect(none.track.some(({ phase }) => phase === 'round-out')).toBe(false);
    expect(renderBody('::round-out', none).messages[0]).toContain('leave `::round-out` out');
  });
});
