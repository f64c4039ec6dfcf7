import { describe, expect, it } from 'vitest';
import { contextOf, flyTrial, renderBody } from '../trial-packet.ts';
import { finalSight } from './final-sight.ts';

const plan = flyTrial();

describe('::final-sight', () => {
  const { html, messages } = renderBody('::final-sight\n\n::final-sight', plan);

  it('is a figure with the drawing and a numbered caption', () => {
    expect(messages).toEqual([]);
    expect(html).toMatch(/^<figure class="drawing final-sight" id="final-sight-1"><svg[^>]*role="img"/);
    expect(html).toContain(
      '>Figure 1</span> The runway as seen on final, low, right and high: 180° approach',
    );
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('says of each view its height, its angle and what it means', () => {
    const [low, right, high] = ['Low', 'Right', 'High'].map((name) => {
      const words = new RegExp(`${name}: (\\d+) ft, aim point (\\d+)° below the horizon\\.`).exec(html)!;
      return { height: Number(words[1]), angle: Number(words[2]) };
    });
    expect(low!.height).toBeLessThan(right!.height);
    expect(right!.height).toBeLessThan(high!.height);
    expect(low!.angle).toBeLessThan(right!.angle);
    expect(right!.angle).toBeLessThan(high!.angle);
    expect(html).toMatch(/creeps up: the glide ends \d+ m short of it/);
  });

  it('says what to do where the flight has no final leg', () => {
    const context = contextOf({ ...plan, track: [] });
    expect(() => finalSight.render({ attributes: {}, label: '', children: [], context, ordinal: 1 })).toThrow(
      /leave `::final-sight` out/,
    );
  });
});
