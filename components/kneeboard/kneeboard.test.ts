import { describe, expect, it } from 'vitest';
import { contextOf, degrees, flyTrial, knots, renderBody } from '../trial-packet.ts';
import { byWind } from './by-wind.ts';
import { shortLine } from './short-line.ts';

const plan = flyTrial();
const ahead = (kt: number) => flyTrial({ wind: { from: degrees(238), speed: knots(kt) } });

describe('::kneeboard', () => {
  const { html, messages } = renderBody('::kneeboard', plan);

  it('is one block, A6 across, with nothing smaller than 12 pt', () => {
    expect(messages).toEqual([]);
    const card = /<div class="card" style="([^"]*)"/.exec(html)![1]!;
    // ISO 216: A6 is 105 mm x 148 mm.
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
    expect(html).toMatch(/Downwind key<\/th><td [^>]*>1,000 ft<\/td><td [^>]*>\(\d+ ft to 1,\d+ ft\)/);
    const aim = plan.keys.find(({ id }) => id === 'aim-point')!;
    expect(html).toContain(`>${Math.round(-aim.along / 10) * 10} m</td>`);
    expect(html).not.toContain('Touchdown');
    const none = plan.gates.map((gate) => (gate.at === 'base-key' ? { ...gate, low: null } : gate));
    expect(renderBody('::kneeboard', { ...plan, gates: none }).html).toMatch(
      /Base key<\/th><td [^>]*>[^<]*<\/td><td [^>]*>\(the plan to /,
    );
  });

  it('has the seconds to the base turn by wind, as a plan in that wind has them', () => {
    const { rows } = byWind(contextOf(plan));
    // 15 kt is within the limits of this aircraft, 20 kt is not.
    expect(rows.map(({ wind }) => wind.replace('\u00a0', ' '))).toEqual([
      'no wind',
      '5 kt',
      '10 kt',
      '15 kt',
    ]);
    rows.forEach(({ figure }, i) => {
      const { keys } = ahead(5 * i);
      const time = (id: string) => keys.find((key) => key.id === id)!.time;
      expect(figure.replace('\u00a0', ' ')).toBe(`${Math.round(time('base-turn') - time('downwind-key'))} s`);
    });
  });

  it('has no figure for a wind in which the approach has a caution, and only then says what that means', () => {
    const late = flyTrial({ minimums: { finalTurn: 110 } });
    expect(ahead(0).keys.find(({ id }) => id === 'final')!.height).toBeLessThan(110);
    expect(byWind(contextOf(late)).rows[0]!.figure).toBe('not sound');
    expect(renderBody('::kneeboard', late).html).toContain('“not sound”: do not fly it in that wind');
    expect(byWind(contextOf(plan)).rows.map(({ figure }) => figure)).not.toContain('not sound');
    expect(html).not.toContain('not sound');
  });

  it('has the height and the place to close the throttle where the approach begins on base', () => {
    const plain = (text: string) => text.replaceAll('\u00a0', ' ');
    const high = byWind(contextOf(flyTrial({ approach: '90' })));
    expect(plain(high.head)).toBe(
      'Throttle closed on base, 500 m before the spot and to its side, by headwind',
    );
    const wind = { from: degrees(238), speed: knots(15) };
    const flown = flyTrial({ approach: '90', wind });
    expect(plain(high.rows[3]!.figure)).toBe(`${Math.round(flown.keys[0]!.height / 3.048) * 10} ft`);
    const given = { approach: '90', height: 213.36 } as const;
    const far = byWind(contextOf(flyTrial(given)));
    expect(plain(far.head)).toBe(
      'Throttle closed at 700 ft, so far before the spot and to its side, by headwind',
    );
    const [key] = flyTrial({ ...given, wind }).keys;
    expect(-key!.along).toBeCloseTo(Math.abs(key!.across), 1);
    expect(plain(far.rows[3]!.figure)).toBe(`${Math.round(-key!.along / 10) * 10} m`);
    expect(new Set(far.rows.map(({ figure }) => figure)).size).toBe(4);
  });

  it('has round winds in the units of the page', () => {
    const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
    expect(byWind(contextOf(plan, metric)).rows.at(-1)!.wind).toBe('30\u00a0km/h');
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
