import { describe, expect, it } from 'vitest';
import type { Gate, Plan } from '../../src/flight/terms/plan.ts';
import { aboveWords, withinWords } from '../../src/words/gates/gate-words.ts';
import { contextOf, degrees, flyTrial, knots, renderBody } from '../trial-packet.ts';
import { gates } from './gates.ts';

const plan = flyTrial();
const context = contextOf(plan);
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
    expect(html).toMatch(
      /Each band was found by flying, .*twice the spacing.*75° in or 45° out.*complete by 300.ft; on final all from the best speed for this wind to an S-turn complete by 300.ft, then the steep approach/,
    );
  });

  it('never says to fly a plan that is not to be flown', () => {
    const grave: Plan = { ...plan, grade: 'not-to-be-flown' };
    for (const gate of plan.gates) {
      const near = [gate, { ...gate, low: gate.plan }, { ...gate, high: gate.plan }];
      for (const each of near) {
        expect(withinWords(each, contextOf(grave))).not.toMatch(/fly the plan/i);
        expect(withinWords(each, context)).toMatch(/fly the plan/i);
      }
    }
  });

  it('says that obstacles are looked for along the plan alone, where there are any', () => {
    const words = 'Obstacles are looked for along the plan alone';
    const { runway } = plan;
    const bare: Plan = { ...plan, runway: { ...runway, obstacles: [] } };
    const mast = { what: 'mast', height: 30, along: 900, across: 900, width: 2 };
    const masted: Plan = { ...plan, runway: { ...runway, obstacles: [mast] } };
    expect(renderBody('::gates', bare).html).not.toContain(words);
    expect(renderBody('::gates', masted).html).toContain(words);
  });

  it('rounds the low edge up and the high edge down, by less than 10 ft', () => {
    const ft = (height: number) => height * 0.3048;
    const clear = plan.gates.map((gate) => ({ ...gate, low: gate.plan - ft(51), high: gate.plan + ft(87) }));
    rowsOf(renderBody('::gates', { ...plan, gates: clear }).html).forEach((row, i) => {
      const { low, high } = clear[i]!;
      const [lowFeet, highFeet] = [low / 0.3048, high / 0.3048];
      expect(feet(row[1]!)).toBeGreaterThanOrEqual(lowFeet - 1e-4);
      expect(feet(row[1]!)).toBeLessThan(lowFeet + 10);
      expect(feet(row[3]!)).toBeLessThanOrEqual(highFeet + 1e-4);
      expect(feet(row[3]!)).toBeGreaterThan(highFeet - 10);
      expect(feet(row[1]!) % 10).toBe(0);
      expect(feet(row[3]!) % 10).toBe(0);
    });
  });

  it('prints a band outside of which no approach flown is sound, and in which a sound one is', () => {
    const [key] = rowsOf(html);
    const isSound = (ft: number) => {
      const { made, cautions } = flyTrial({ height: ft * 0.3048, detail: 'flight' });
      // The turn to final is complete at 300 ft or more (FAA-H-8083-3A, chapter 8), the base turn not far out.
      return made && !cautions.some(({ code }) => code === 'final-turn-low' || code === 'base-turn-far');
    };
    const [low, high] = [feet(key![1]!), feet(key![3]!)];
    expect(isSound(1000)).toBe(true);
    expect(low).toBeLessThan(1000);
    expect(high).toBeGreaterThan(1000);
    for (const height of [low - 20, low - 100, high + 20, high + 100]) expect(isSound(height)).toBe(false);
  });

  it('names the shortest and the longest way that the gate allows, and what is done in the band', () => {
    const [key, base, final] = rowsOf(html);
    expect(key![4]).toBe(
      'Power; with no engine, a nearer aim point or another field: even a base turn at once and base leg turned in, with final from 300 ft, fall short.',
    );
    expect(key![5]).toContain(
      'Lower: turn base sooner, turn base leg in. Higher: move the base turn out, turn base leg out; the rest on final.',
    );
    expect(key![6]).toBe(
      'Go around; with no engine, circle first, or land farther in: even the base turn moved out, base leg turned out and the most that final takes pass the spot.',
    );
    expect(base![4]).toBe(
      'Power; with no engine, a nearer aim point or another field: even the corner cut, with final from 300 ft, falls short.',
    );
    expect(base![5]).toContain('cut the corner. Higher: turn base leg out; the rest on final');
    expect(base![6]).toContain('even base leg turned out and the most that final takes pass the spot');
    expect(final![4]).toContain('even the best speed for this wind falls short');
    expect(final![5]).toContain('Higher: the steep approach; for more, first an S-turn complete by 300 ft');
    expect(final![6]).toBe(
      'Go around; with no engine, land farther in: even an S-turn and the steep approach pass the spot.',
    );
  });

  it('names the least height that the school asks for, never rounded down', () => {
    const own = flyTrial({ minimums: { finalTurn: 365 * 0.3048 } });
    const page = renderBody('::gates', own).html;
    expect(page).not.toContain('300 ft');
    expect(page).toContain('complete by 370 ft');
  });

  it('sends nobody into a headwind that is not there', () => {
    for (const from of [238, 58]) {
      const page = renderBody('::gates', flyTrial({ wind: { from: degrees(from), speed: knots(6) } })).html;
      expect(page).toContain('even the best speed for this wind falls short');
      expect(page).not.toMatch(/into (this|the) wind|against/);
    }
  });

  it('offers no power where the engine is stopped, and no steep approach where there is none', () => {
    const stopped = flyTrial({ power: 'stopped' });
    const rows = rowsOf(renderBody('::gates', stopped).html);
    expect(rows.flat().join(' ')).not.toMatch(/[Pp]ower|[Gg]o around/);
    expect(rows[0]![6]).toMatch(/^Circle first, or land farther in: even the base turn/);
    const without = { ...plan, aircraft: { ...plan.aircraft, steepApproach: undefined } };
    expect(rowsOf(renderBody('::gates', without).html).flat().join(' ')).not.toContain('steep');
  });

  it('prints a dash where one edge was not found, and claims no more than that', () => {
    const none = plan.gates.map((gate) => (gate.at === 'base-key' ? { ...gate, low: null } : gate));
    const row = rowsOf(renderBody('::gates', { ...plan, gates: none }).html)[1]!;
    expect(row[1]).toBe('–');
    expect(row[4]).toBe(
      'No lowest height was found: treat any height below the plan as too low. Power; with no engine, a nearer aim point or another field.',
    );
    expect(row[5]).toMatch(/^Fly the plan; no lower height was found sound\. Higher: turn base leg out/);
    const open: Gate = { at: 'final', low: 60, plan: 80, high: null };
    expect(aboveWords(open, context)).toMatch(
      /^No highest height was found: treat any height above the plan as too high/,
    );
  });

  it('prints no band, and why, where no way comes to the spot, or the edges cross, also after rounding', () => {
    const ft = (low: number | null, planned: number, high: number | null): Gate => ({
      at: 'final',
      low: low === null ? null : low * 0.3048,
      plan: planned * 0.3048,
      high: high === null ? null : high * 0.3048,
    });
    const rowOf = (gate: Gate) => rowsOf(renderBody('::gates', { ...plan, gates: [gate] }).html)[0]!;
    const cases = [
      [ft(null, 400, null), /^No band: none of the ways named above this table comes to the spot from here/],
      [ft(420, 400, 380), /^No band: the lowest height that reaches the spot is above the highest/],
      [ft(1362, 1365, 1368), /^No band: .* less than 10 ft apart\. Fly the plan; there is nothing in hand/],
      [ft(1362, 1300, 1368), /^No band: .* less than 10 ft apart\. The plan is below it, and too low\.$/],
    ] as const;
    for (const [gate, why] of cases) {
      const row = rowOf(gate);
      expect([row[1], row[3]]).toEqual(['no band', 'no band']);
      expect(row[5]).toMatch(why);
      expect(row.join(' ')).not.toMatch(/even|Lower: /);
    }
    expect(rowOf(ft(1361, 1370, 1371)).slice(1, 4)).toEqual(['1,370 ft', '1,370 ft', '1,370 ft']);
  });

  it('says where the plan lies outside the band', () => {
    const tail: Plan = flyTrial({ height: 180 });
    const key = tail.gates.find(({ at }) => at === 'downwind-key')!;
    expect(key.plan).toBeLessThan(key.low!);
    expect(withinWords(key, contextOf(tail))).toMatch(
      /^The plan itself is below the band, and too low\. In the band: turn base leg in or out, to be on final by 300.ft\.$/,
    );
    expect(withinWords({ ...key, plan: key.high! + 10 }, contextOf(tail))).toMatch(
      /^The plan itself is above the band, and too high\. In the band: turn base sooner/,
    );
  });

  it('says that another way is sound where the turn to final of the plan itself is too low', () => {
    const low = {
      ...plan,
      keys: plan.keys.map((key) => (key.id === 'final' ? { ...key, height: 88 } : key)),
    };
    const [key, base, final] = rowsOf(renderBody('::gates', low).html);
    const tooLow = "The plan's own turn to final is too low: ";
    for (const row of [key!, base!]) {
      expect(row[5]!.startsWith(`${tooLow}turn base leg in, to be on final by 300 ft. Higher: `)).toBe(true);
    }
    expect(final![5]).toBe('The plan itself is too low here, under 300 ft: begin higher.');
    expect(html).not.toContain(tooLow);
  });

  it('says under the plan what it has in hand below, and nothing where there is none', () => {
    const planOf = (low: number | null, planned: number) => {
      const gate: Gate = { at: 'base-key', low: low && low * 0.3048, plan: planned * 0.3048, high: 400 };
      return rowsOf(renderBody('::gates', { ...plan, gates: [gate] }).html)[0]![2]!;
    };
    expect(planOf(641, 698)).toBe('700 ft <small>50 ft in hand below</small>');
    expect(planOf(688, 698)).toBe('700 ft <small>10 ft in hand below</small>');
    expect(planOf(690, 698)).toBe('700 ft');
    expect(planOf(700, 700)).toBe('700 ft');
    expect(planOf(691, 694)).toBe('690 ft');
    expect(planOf(null, 700)).toBe('700 ft');
    expect(planOf(760, 700)).toBe('700 ft');
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
      'Fly the plan; there is next to nothing in hand below it: treat any lower height as too low. Higher: the steep approach; for more, first an S-turn complete by 300 ft.',
    );
    const clear: Gate = { ...atEdge, low: feet(369) };
    expect(rowsOf(renderBody('::gates', { ...plan, gates: [clear] }).html)[0]![1]).toMatch(/^370.ft$/);
  });

  it('says a word about a lower height only where there is one to be printed', () => {
    const feet = (value: number) => value * 0.3048;
    const base: Gate = { at: 'base-key', low: feet(668), plan: feet(676), high: feet(990) };
    expect(withinWords(base, context)).toMatch(/^Fly the plan; there is next to nothing in hand below it/);
    expect(withinWords({ ...base, low: feet(661) }, context)).toContain('Lower: turn in');
    const none = withinWords({ ...base, high: feet(677) }, context);
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
