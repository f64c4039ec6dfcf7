import { describe, expect, it } from 'vitest';
import { flyTrial, knots, renderBody } from '../trial-packet.ts';

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
    const times = /heights drawn ([\d.]+) times as large/.exec(html)?.[1];
    expect(html).toContain(`Heights drawn ${times}× as large as distances`);
  });

  it('numbers figures through, whichever drawing they hold', () => {
    const both = renderBody('::pattern\n\n::profile', plan).html;
    expect(both).toMatch(/id="pattern-1".*Figure 1<.*id="profile-1".*Figure 2</s);
  });
});

describe('::profile{faults=…}', () => {
  const { html, messages } = renderBody('::profile{faults="base-turn-late base-turn-early"}', plan);

  it('draws each fault dashed over the plan and says where it ends', () => {
    expect(messages).toEqual([]);
    expect(html.match(/stroke-dasharray="2.6 1.3"/g)).toHaveLength(1);
    expect(html.match(/stroke-dasharray="1.4 1"/g)).toHaveLength(1);
    expect(html).toMatch(/Fault flown over it: Base turn late, \d+ m short\./);
    expect(html).toMatch(/Fault flown over it: Base turn early, \d+ m long\./);
    expect(html).toContain('. Dashed: the same approach with one thing done wrong.');
  });

  it('puts their crosses as far apart as they end', () => {
    const axis = [...html.matchAll(/<text x="([\d.]+)"[^>]*>([\d,]+) m</g)].map(([, x, metres]) => ({
      x: Number(x),
      metres: Number(metres!.replace(',', '')),
    }));
    const zero = axis.find(({ metres }) => metres === 0)!;
    const far = axis.find(({ metres }) => metres >= 1000)!;
    const perMetre = (zero.x - far.x) / far.metres;
    const layer = /-faults"[^>]*>(.*?)<\/g>/s.exec(html)![1]!;
    const lines = [...layer.matchAll(/<line x1="([\d.]+)"[^>]*? x2="([\d.]+)"/g)];
    const [late, early] = [lines[0]!, lines[2]!].map(([, from, to]) => (Number(from) + Number(to)) / 2);
    const said = (text: RegExp) => Number(text.exec(html)![1]);
    const [short, long] = [said(/Base turn late, (\d+) m short/), said(/Base turn early, (\d+) m long/)];
    // Said to 10 m.
    expect(Math.abs((zero.x - late!) / perMetre - short)).toBeLessThan(8);
    expect(Math.abs((early! - zero.x) / perMetre - long)).toBeLessThan(8);
  });

  it('names the nearest row, takes four at most, and says of a fault that is not flown why', () => {
    const messageOf = (ids: string, of = plan) => renderBody(`::profile{faults="${ids}"}`, of).messages;
    expect(messageOf('base-turn-lat')).toEqual([
      expect.stringContaining('has a row `base-turn-lat`; did you mean `base-turn-late`?'),
    ]);
    expect(messageOf('a b c d e')).toEqual([expect.stringContaining('write ids of one to 4 faults')]);
    expect(messageOf('')).toEqual([expect.stringContaining('write ids of one to 4 faults')]);
    const calm = flyTrial({ wind: { from: 0, speed: knots(0) } });
    expect(messageOf('base-turn-late', calm)).toEqual([]);
  });
});
