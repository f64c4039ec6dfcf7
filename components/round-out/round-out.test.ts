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

describe('::round-out{faults=…}', () => {
  const messageOf = (ids: string) => renderBody(`::round-out{faults="${ids}"}`, plan).messages;

  it('draws each fault dashed over the landing and says where and how it ends', () => {
    const { html, messages } = renderBody('::round-out{faults="round-out-high balloon float"}', plan);
    expect(messages).toEqual([]);
    for (const dashes of ['2.6 1.3', '1.4 1', '7 1.4']) {
      expect(html.split(`stroke-dasharray="${dashes}"`)).toHaveLength(2);
    }
    expect(html).toMatch(/Fault flown over it: High round-out, \d+ m short, speed gone \d+ ft up\./);
    expect(html).toMatch(/Fault flown over it: Balloon, \d+ m short, speed gone \d+ ft up\./);
    expect(html).toMatch(/Fault flown over it: Float, [^.]+\./);
    expect(html).toContain('. Dashed: the same landing with one thing done wrong.');
  });

  it('sends a fault that ends far off to the drawings that reach it', () => {
    expect(messageOf('base-turn-late')).toEqual([
      expect.stringMatching(
        /The fault `base-turn-late` ends \d+.m short, too far off for this drawing: draw it with `::pattern` or `::profile` instead/,
      ),
    ]);
    expect(messageOf('balloon base-turn-early')).toEqual([expect.stringContaining('`base-turn-early` ends')]);
  });

  it('says of a fault that differs in nothing it shows that it does', () => {
    expect(messageOf('touchdown-drift')).toEqual([
      expect.stringContaining('`touchdown-drift` takes the wheels along the planned path today'),
    ]);
  });

  it('names the nearest row, and takes four at most', () => {
    expect(messageOf('ballon')).toEqual([expect.stringContaining('did you mean `balloon`?')]);
    expect(messageOf('a b c d e')).toEqual([expect.stringContaining('write ids of one to 4 faults')]);
  });
});
