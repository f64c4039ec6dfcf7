import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { byWind } from '../../src/words/card/by-wind.ts';
import { shortLine } from '../../src/words/card/short-line.ts';
import { contextOf, degrees, feetAndKnots, flyTrial, knots, renderBody } from '../trial-packet.ts';

const plan = flyTrial();
const table = (flown: Plan, units = feetAndKnots) => byWind(flown, contextOf(flown).request, units);
/** The cells of each row of the first table, heads first. */
const keyCells = (html: string) => {
  const [body] = /<tbody>.*?<\/tbody>/s.exec(html)!;
  return [...body.matchAll(/<tr>(.*?)<\/tr>/gs)].map(([, row]) =>
    [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gs)].map(([, cell]) => cell!.replace(/<[^>]*>/g, '')),
  );
};
const ahead = (kt: number) => flyTrial({ wind: { from: degrees(238), speed: knots(kt) } });

describe('::kneeboard', () => {
  const { html, messages } = renderBody('::kneeboard', plan);

  it('is one block, as wide as A5, with nothing smaller than 12 pt', () => {
    expect(messages).toEqual([]);
    const card = /<div class="card" style="([^"]*)"/.exec(html)![1]!;
    // ISO 216: A5 is 148 mm wide, A6 105 mm.
    expect(card).toContain('width:148mm');
    expect(card).toContain('min-height:105mm');
    const [inside] = html.split('<figcaption');
    const sizes = [...inside!.matchAll(/(?:font:|font-size:)(?:\d{3} )?([\d.]+)pt/g)].map((size) =>
      Number(size[1]),
    );
    expect(sizes.length).toBeGreaterThan(5);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12);
  });

  it('has keys and heights with their bands, and the aim point', () => {
    const [key] = keyCells(html);
    expect(key!.slice(0, 5)).toEqual(['Downwind key', '1,000', edge('low'), edge('high'), '0']);
    const aim = plan.keys.find(({ id }) => id === 'aim-point')!;
    expect(html).toContain(`Aim point ${Math.round(-aim.along / 10) * 10} m before the spot`);
    expect(html).not.toContain('Touchdown');
    const none = plan.gates.map((gate) => (gate.at === 'base-key' ? { ...gate, low: null } : gate));
    const base = keyCells(renderBody('::kneeboard', { ...plan, gates: none }).html).find(
      ([name]) => name === 'Base key',
    );
    expect(base![2]).toBe('plan');

    function edge(which: 'low' | 'high'): string {
      const feet = plan.gates.find(({ at }) => at === 'downwind-key')![which]! / 0.3048;
      const tens = which === 'low' ? Math.ceil(feet / 10 - 1e-6) : Math.floor(feet / 10 + 1e-6);
      return (10 * tens).toLocaleString('en');
    }
  });

  it('has beside the engine-failure list the keys of a plan with the engine stopped, under its name', () => {
    const stopped = flyTrial({ power: 'stopped' });
    expect(html).toMatch(/>Engine idling<\/th><th [^>]*>Engine stopped<\/th>/);
    const rows = keyCells(html);
    const heights = (flown: Plan) =>
      flown.keys
        .filter(({ id }) => id !== 'aim-point' && id !== 'touchdown')
        .map(({ height }) => (10 * Math.round(height / 3.048)).toLocaleString('en'));
    expect(rows.map(([, idling]) => idling)).toEqual(heights(plan));
    expect(rows.map((row) => row.at(row.length === 7 ? 4 : 5))).toEqual(heights(stopped));
    expect(heights(stopped)).not.toEqual(heights(plan));
    const place = (flown: Plan) =>
      `${10 * Math.round(-flown.keys.find(({ id }) => id === 'base-turn')!.along / 10)} m past`;
    const [, turn] = rows;
    expect([turn![2], turn![5]]).toEqual([place(plan), place(stopped)]);

    const alone = renderBody('::kneeboard', stopped).html;
    expect(alone).not.toContain('Engine idling');
    expect(keyCells(alone).map(([, height]) => height)).toEqual(heights(stopped));
  });

  it('has no keys of a stopped engine where its file gives no such glide, and says so beside the list', () => {
    const { glide, ...rest } = plan.aircraft;
    const aircraft = { ...rest, glide: { idle: glide.idle } };
    const { html: bare } = renderBody('::kneeboard', flyTrial({ aircraft }));
    expect(bare).not.toMatch(/<th [^>]*>Engine stopped<\/th>/);
    expect(bare).toMatch(
      /Engine failure\. .*<b>Engine stopped: <\/b>No key heights: its file gives no glide with the engine stopped\./,
    );
  });

  it('says why, and from where, where the approach is not to be flown with the engine stopped', () => {
    const calm = { speed: 0, from: 0 };
    const final = (power: 'idle' | 'stopped') =>
      flyTrial({ wind: calm, power }).keys.find(({ id }) => id === 'final')!.height;
    // Under two thirds of the least height, a turn to final is not to be flown: the idling one is above that, the
    // stopped one below it.
    const minimums = { finalTurn: (1.5 * (final('idle') + final('stopped'))) / 2 };
    const idle = flyTrial({ minimums, wind: calm });
    const stopped = flyTrial({ minimums, wind: calm, power: 'stopped' });
    expect([idle.grade, stopped.grade]).toEqual(['beyond-good-practice', 'not-to-be-flown']);
    const { html: low } = renderBody('::kneeboard', idle);
    expect(low).not.toMatch(/<th [^>]*>Engine stopped<\/th>/);
    const [, from] =
      /Engine stopped: <\/b>Not to be flown from 1,000 ft: turn to final complete at \d+ ft, at least \d+ ft; sound from ([\d,]+) ft at the downwind key\./.exec(
        low,
      )!;
    const height = Number(from!.replace(',', '')) * 0.3048;
    const at = (metres: number) => flyTrial({ minimums, wind: calm, power: 'stopped', height: metres });
    const limits = (flown: Plan) => flown.cautions.filter(({ grade }) => grade !== 'worth-knowing');
    expect(limits(at(height))).toEqual([]);
    expect(limits(at(height - 3.048)).map(({ code }) => code)).toEqual(['final-turn-low']);
  });

  it('has the height by which the turn to final is complete: 300 ft, or what the school asks for', () => {
    expect(html).toContain('<b>Turn to final complete by 300 ft</b>, or go around (stopped: land ahead).');
    const raised = flyTrial({ minimums: { finalTurn: 400 * 0.3048 }, power: 'stopped' });
    expect(renderBody('::kneeboard', raised).html).toContain(
      '<b>Turn to final complete by 400 ft</b>, or no further turn: land ahead.',
    );
    const low = flyTrial({ minimums: { finalTurn: 30 } });
    expect(renderBody('::kneeboard', low).html).toContain('complete by 300 ft');
  });

  it('has a black band above everything where the plan is not to be flown, and its heights struck through', () => {
    const across = flyTrial({ wind: { from: degrees(148), speed: knots(14) } });
    const { html: card } = renderBody('::kneeboard', across);
    expect(card).toMatch(
      /<div class="card" [^>]*><p class="grade-band not-to-be-flown" style="[^"]*background:#000;color:#fff[^"]*"><b>Not to be flown: <\/b>crosswind 14 kt, at most 9 kt\.<\/p>/,
    );
    expect(card).toMatch(/<td [^>]*><s class="not-to-be-flown">1,000/);
    expect(html).not.toContain('grade-band not-to-be-flown');
    expect(html).not.toContain('<s ');
  });

  it('has a band for a limit of good practice, and a mark at the key', () => {
    const minimums = { finalTurn: 1.1 * plan.keys.find(({ id }) => id === 'final')!.height };
    const low = flyTrial({ minimums });
    expect(low.grade).toBe('beyond-good-practice');
    const { html: card } = renderBody('::kneeboard', low);
    expect(card).toMatch(
      /<div class="card" [^>]*><p class="grade-band beyond-good-practice" [^>]*><b>Beyond a limit: <\/b>turn to final complete at \d+ ft, at least \d+ ft/,
    );
    const marked = /<tr><th [^>]*>Final<\/th>.*?<\/tr>/.exec(card)![0];
    expect(marked).toContain('role="img" aria-label="beyond a limit"');
    expect(html).not.toContain('aria-label="beyond a limit"');
  });

  it('has the seconds to the base turn by wind, as a plan in that wind has them', () => {
    const { head, winds, rows, notes } = table(plan);
    // 15 kt is within the limits of this aircraft, 20 kt is not.
    expect([head, winds]).toEqual(['headwind, kt', ['0', '5', '10', '15']]);
    expect(rows.map(({ name }) => name)).toEqual(['Base turn, s after abeam', 'Base key, ft']);
    rows[0]!.cells.forEach((text, i) => {
      const { keys } = ahead(5 * i);
      const time = (id: string) => keys.find((key) => key.id === id)!.time;
      expect(text).toBe(`${Math.round(time('base-turn') - time('downwind-key'))}`);
    });
    expect(notes).toEqual([]);
  });

  it('has no figure for a wind in which the approach is beyond a limit, but the height from which it is not', () => {
    const minimums = { finalTurn: 110 };
    const late = flyTrial({ minimums });
    expect(ahead(0).keys.find(({ id }) => id === 'final')!.height).toBeLessThan(110);
    const { rows, notes } = table(late);
    expect(rows.map(({ cells }) => cells[0]!).slice(0, 2)).toEqual(['×', '×']);
    expect(rows[2]!.name).toBe('× unless key at, ft');
    const from = Number(rows[2]!.cells[0]!.replace(',', '')) * 0.3048;
    const limits = (height: number) =>
      flyTrial({ minimums, height, wind: { from: 0, speed: 0 } }).cautions.filter(
        ({ grade }) => grade !== 'worth-knowing',
      );
    expect(limits(from)).toEqual([]);
    expect(limits(from - 3.048).map(({ code }) => code)).toEqual(['final-turn-low']);
    expect(rows[2]!.cells[3]).toBe('');
    expect(notes).toEqual(['× not sound.']);
    expect(renderBody('::kneeboard', late).html).toContain('× not sound.');
    expect(html).not.toContain('×');
  });

  it('says of a wind in which no height helps, why', () => {
    const mast = { what: 'mast', height: 60, along: -250, across: 0, width: 4 };
    const runway = { ...plan.runway, obstacles: [mast] };
    const { rows, notes } = table(flyTrial({ runway }));
    expect(rows[0]!.cells[0]).toBe('×');
    expect(rows.find(({ name }) => name.startsWith('×'))?.cells[0] ?? 'none').toBe('none');
    expect(notes).toEqual([expect.stringMatching(/^× not sound from any height: .*too near an obstacle/)]);
  });

  it('has a tailwind among its winds where the plan has one, and calls it that', () => {
    const behind = table(flyTrial({ wind: { from: degrees(58), speed: knots(3) } }));
    expect([behind.head, behind.winds]).toEqual(['head or tail, kt', ['tail 5', '0', '5', '10', '15']]);
    const { keys } = flyTrial({ wind: { from: degrees(58), speed: knots(5) }, detail: 'flight' });
    const final = keys.find(({ id }) => id === 'final')!.height;
    expect(behind.rows[0]!.cells[0] === '×').toBe(final < 300 * 0.3048);
  });

  it('has the height and the place to close the throttle where the approach begins on base', () => {
    const wind = { from: degrees(238), speed: knots(15) };
    const near = { approach: '90', options: { '90': { baseDistance: 500 } } } as const;
    const high = table(flyTrial(near));
    const flown = flyTrial({ ...near, wind });
    expect(high.rows[0]!.name).toBe('Throttle closed, ft');
    expect(high.rows[0]!.cells[3]).toBe(`${Math.round(flown.keys[0]!.height / 3.048) * 10}`);
    // Too low a turn to final in a calm: the height that works has a distance of its own.
    expect(high.rows.map(({ name }) => name)).toEqual([
      'Throttle closed, ft',
      '× unless closed at, ft',
      '× and so far out, m',
    ]);
    const [, from, out] = high.rows.map(({ cells }) => Number(cells[0]!.replace(',', '')));
    const again = flyTrial({ approach: '90', wind: { from: 0, speed: 0 }, height: from! * 0.3048 });
    expect(again.grade).not.toBe('not-to-be-flown');
    expect(out).toBe(10 * Math.round(Math.abs(again.keys[0]!.across) / 10));

    // Where neither is given, both change with the wind.
    const free = table(flyTrial({ approach: '90' }));
    expect(free.rows.map(({ name }) => name)).toEqual(['Throttle closed, ft', 'and so far out, m']);
    const [freely] = flyTrial({ approach: '90', wind }).keys;
    expect(free.rows.map(({ cells }) => cells[3])).toEqual([
      `${Math.round(freely!.height / 3.048) * 10}`,
      `${Math.round(Math.abs(freely!.across) / 10) * 10}`,
    ]);

    const given = { approach: '90', height: 300 } as const;
    const far = table(flyTrial(given));
    expect(far.rows.map(({ name }) => name)).toEqual(['Throttle closed, m out']);
    const [key] = flyTrial({ ...given, wind }).keys;
    expect(-key!.along).toBeCloseTo(Math.abs(key!.across), 1);
    expect(far.rows[0]!.cells[3]).toBe(`${Math.round(-key!.along / 10) * 10}`.replace(/^1(\d{3})$/, '1,$1'));
    expect(new Set(far.rows[0]!.cells).size).toBe(4);
    expect(renderBody('::kneeboard', flyTrial(given)).html).toMatch(
      /Base key [\d,]+ m out \(stopped [\d,]+ m\)\. Aim point/,
    );
  });

  it('has round winds in the units of the page', () => {
    const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
    const { head, winds } = table(plan, metric);
    expect([head, winds]).toEqual(['headwind, km/h', ['0', '10', '20', '30']]);
  });

  it("has the catchwords of the aircraft's own list, in its order", () => {
    expect(html).toMatch(
      /Engine failure\. <\/b><span style="white-space:nowrap"><b>1 <\/b>\w+<\/span>\s+<span[^>]*><b>2 <\/b>Field/,
    );
    expect(shortLine('Field: take the best one.')).toBe('Field');
    expect(shortLine('Checks, if there is height: fuel on.')).toBe('Checks');
    expect(shortLine('Bar in, to the glide speed. Be quick.')).toBe('Bar in, to the glide speed');
    expect(shortLine('Before the turn to final: ignition off.')).toBe(
      'Before the turn to final: ignition off',
    );
  });
});
