import { describe, expect, it } from 'vitest';
import type { Gate, Plan } from '../../src/flight/plan.ts';
import { contextOf, flyTrial, renderBody } from '../trial-packet.ts';
import { aboveWords, belowWords, withinWords } from './gate-words.ts';
import { gates } from './gates.ts';

const plan = flyTrial();
const rowsOf = (html: string) =>
  [...html.matchAll(/<tr><th scope="row">(.*?)<\/th>(.*?)<\/tr>/g)].map((row) => [
    row[1]!,
    ...[...row[2]!.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map((cell) => cell[1]!),
  ]);
const feet = (text: string) => Number(text.replace(/[^\d]/g, ''));

describe('::gates', () => {
  const { html, messages } = renderBody('::gates', plan);

  it('has a row for each gate of the plan', () => {
    expect(messages).toEqual([]);
    expect(rowsOf(html).map(([name]) => name)).toEqual(['Downwind key', 'Base key', 'Final']);
    expect(html).toContain('the lowest is rounded up, the highest down');
  });

  it('rounds the low edge up and the high edge down, by less than 10 ft', () => {
    rowsOf(html).forEach((row, i) => {
      const { low, high } = plan.gates[i]!;
      const [lowFeet, highFeet] = [low! / 0.3048, high! / 0.3048];
      expect(feet(row[1]!)).toBeGreaterThanOrEqual(lowFeet - 1e-4);
      expect(feet(row[1]!)).toBeLessThan(lowFeet + 10);
      expect(feet(row[3]!)).toBeLessThanOrEqual(highFeet + 1e-4);
      expect(feet(row[3]!)).toBeGreaterThan(highFeet - 10);
      expect(feet(row[1]!) % 10).toBe(0);
      expect(feet(row[3]!) % 10).toBe(0);
    });
  });

  it('prints a band from which the approach flown is sound, and below which it is not', () => {
    const [key] = rowsOf(html);
    const from = (ft: number) => flyTrial({ height: ft * 0.3048 });
    expect(from(feet(key![1]!)).made).toBe(true);
    // A plan flown from above the low edge turns to final at 300 ft or more (FAA-H-8083-3, chapter 9).
    expect(from(feet(key![1]!)).cautions.map(({ code }) => code)).not.toContain('final-turn-low');
    const below = from(feet(key![1]!) - 100);
    expect(!below.made || below.cautions.some(({ code }) => code === 'final-turn-low')).toBe(true);
  });

  it('says what it takes below, in and above the band', () => {
    const [key, base, final] = rowsOf(html);
    expect(key![4]).toMatch(/^Power, or another field: even the base turn at once/);
    expect(key![5]).toContain('Higher: move the base turn out');
    expect(base![5]).toContain('cut the corner. Higher: widen');
    expect(final![5]).toContain('Higher: the steep approach');
    expect(final![6]).toMatch(/^Go around; with no engine, land farther in/);
  });

  it('offers no power where the engine is stopped, and no steep approach where there is none', () => {
    const stopped = flyTrial({ power: 'stopped' });
    const rows = rowsOf(renderBody('::gates', stopped).html);
    expect(rows.flat().join(' ')).not.toMatch(/[Pp]ower|[Gg]o around/);
    const without = { ...plan, aircraft: { ...plan.aircraft, steepApproach: undefined } };
    expect(rowsOf(renderBody('::gates', without).html).flat().join(' ')).not.toContain('steep');
  });

  it('prints a dash, and what it means, where there is no edge', () => {
    const none = plan.gates.map((gate) => (gate.at === 'base-key' ? { ...gate, low: null } : gate));
    const row = rowsOf(renderBody('::gates', { ...plan, gates: none }).html)[1]!;
    expect(row[1]).toBe('–');
    expect(row[4]).toMatch(/^No sound path from here: the turn to final is complete only below 300.ft/);
    expect(row[5]).toMatch(/^Fly the plan; no lower height was found sound\. Higher: widen/);
    const open: Gate = { at: 'final', low: 60, plan: 80, high: null };
    expect(aboveWords(open, plan)).toMatch(/^No longer way was found .* above the plan as too high/);
    expect(belowWords({ ...open, low: null }, plan, contextOf(plan).units)).toContain(
      'below the plan as too low',
    );
  });

  it('says where the plan lies below the band, and where there is no band', () => {
    const tail: Plan = flyTrial({ height: 180 });
    const key = tail.gates.find(({ at }) => at === 'downwind-key')!;
    expect(key.plan).toBeLessThan(key.low!);
    expect(withinWords(key, tail, contextOf(tail).units)).toMatch(
      /^The plan itself is below the band, and too low\. In the band: move the base turn out/,
    );
    expect(withinWords({ ...key, high: key.low! - 20 }, tail, contextOf(tail).units)).toMatch(
      /^No height is sound here/,
    );
  });

  it('names the plan as the edge where rounding would put the plan outside its own band', () => {
    const feet = (value: number) => value * 0.3048;
    const atEdge: Gate = { at: 'final', low: feet(382), plan: feet(383), high: feet(484) };
    const html = renderBody('::gates', { ...plan, gates: [atEdge] }).html;
    expect(
      rowsOf(html)[0]!
        .slice(1, 4)
        .map((text) => text.replaceAll('\u00a0', ' ')),
    ).toEqual(['the plan', '380 ft', '480 ft']);
    expect(html).toContain(
      'Fly the plan; there is next to nothing in hand below it: treat any lower height as too low. Higher: the steep approach.',
    );
    const clear: Gate = { ...atEdge, low: feet(369) };
    expect(rowsOf(renderBody('::gates', { ...plan, gates: [clear] }).html)[0]![1]).toMatch(/^370.ft$/);
  });

  it('says a word about a lower height only where there is one to be printed', () => {
    const feet = (value: number) => value * 0.3048;
    const { units } = contextOf(plan);
    const base: Gate = { at: 'base-key', low: feet(668), plan: feet(676), high: feet(990) };
    expect(withinWords(base, plan, units)).toMatch(
      /^Fly the plan; there is next to nothing in hand below it/,
    );
    expect(withinWords({ ...base, low: feet(661) }, plan, units)).toContain('Lower: turn in');
    const none = withinWords({ ...base, high: feet(677) }, plan, units);
    expect(none).toMatch(/There is nothing in hand above it either\.$/);
    expect(none).not.toMatch(/Lower:|Higher:/);
  });

  it('is an error where the spot is not made', () => {
    const short = flyTrial({ height: 90 });
    expect(short.gates).toEqual([]);
    const use = { attributes: {}, label: '', children: [], ordinal: 1, context: contextOf(short) };
    expect(() => gates.render(use)).toThrow('There is no band of heights to print');
  });
});
