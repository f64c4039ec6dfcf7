import { describe, expect, it } from 'vitest';
import { flyTrial, renderBody } from '../trial-packet.ts';

const plan = flyTrial();

describe('::pattern', () => {
  const { html, messages } = renderBody('::pattern\n\n::pattern', plan);

  it("puts the author's own title before the caption's words", () => {
    const titled = renderBody('::pattern{title="The keys in this wind."}', plan);
    expect(titled.messages).toEqual([]);
    expect(titled.html).toMatch(
      /<figcaption>.*<\/span> The keys in this wind\. 180° approach to runway 24 at /,
    );
  });

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

describe('::pattern{faults=…}', () => {
  const trial = flyTrial();

  it('draws each fault dashed over the plan, to where it was flown to, and says so in figures', () => {
    const { html, messages } = renderBody('::pattern{faults="base-turn-late base-turn-early"}', trial);
    expect(messages).toEqual([]);
    expect(html).toMatch(/Fault flown over it: Base turn late, \d+ m short\./);
    expect(html).toMatch(/Fault flown over it: Base turn early, \d+ m long\./);
    expect(html).toContain('Dashed: the same approach with one thing done wrong.');
    expect(html.match(/stroke-dasharray="2.6 1.3"/g)).toHaveLength(1);
    expect(html.match(/stroke-dasharray="1.4 1"/g)).toHaveLength(1);
  });

  it('draws the whole of it to scale: the crosses lie as far apart as the ends were flown', () => {
    const { html } = renderBody('::pattern{faults="base-turn-late base-turn-early"}', trial);
    const scale = Number(/scale 1:([\d,]+)\./.exec(html)![1]!.replaceAll(',', ''));
    const layer = /-faults"[^>]*>(.*?)<\/g>/s.exec(html)![1]!;
    const crosses = [...layer.matchAll(/<line[^>]*?x1="([\d.]+)"[^>]*?y1="([\d.]+)"|<line[^>]*>/g)].filter(
      ([, x]) => x !== undefined,
    );
    expect(crosses).toHaveLength(4);
    const [first, second] = [crosses[0]!, crosses[2]!].map(([, x, y]) => [Number(x), Number(y)] as const);
    const apart = (Math.hypot(second![0] - first![0], second![1] - first![1]) * scale) / 1000;
    const flown = (text: RegExp) => Number(text.exec(html)![1]);
    const said = flown(/Base turn late, (\d+) m short/) + flown(/Base turn early, (\d+) m long/);
    expect(Math.abs(apart - said)).toBeLessThan(12);
  });

  it('names the nearest row, and the files where two have it', () => {
    expect(renderBody('::pattern{faults="base-turn-lat"}', trial).messages).toEqual([
      expect.stringContaining('has a row `base-turn-lat`; did you mean `base-turn-late`?'),
    ]);
    expect(renderBody('::pattern{faults="a b c d e"}', trial).messages).toEqual([
      expect.stringContaining('write ids of one to 4 faults'),
    ]);
  });
});
