import { describe, expect, it } from 'vitest';
import { contextOf, degrees, flyTrial, knots, renderBody, sayIn } from '../trial-packet.ts';
import { key } from './key.ts';

const plan = flyTrial();
const at = (id: string) => plan.keys.find((each) => each.id === id)!;

describe(':key[…]', () => {
  it('says the height above the spot, in the units of the page', () => {
    expect(sayIn(':key[downwind-key]', plan)).toBe('1,000 ft');
    expect(
      sayIn(':key[downwind-key]{show=height}', plan, { height: 'm', distance: 'm', speed: 'km/h' }),
    ).toBe('305 m');
  });

  it('says where the key lies and when it is passed', () => {
    const turn = at('base-turn');
    const tens = (metres: number) => `${Math.round(metres / 10) * 10} m`;
    expect(sayIn(':key[base-turn]{show=past-abeam}', plan)).toBe(tens(-turn.along));
    expect(sayIn(':key[base-turn]{show=along}', plan)).toBe(`${tens(-turn.along)} before the spot`);
    expect(sayIn(':key[base-turn]{show=across}', plan)).toBe('500 m to the left');
    expect(sayIn(':key[base-turn]{show=distance}', plan)).toBe(
      tens(Math.sqrt(turn.along ** 2 + turn.across ** 2)),
    );
    expect(sayIn(':key[final]{show=across}', plan)).toBe('on the centreline');
    expect(sayIn(':key[downwind-key]{show=along}', plan)).toBe('abeam the spot');
    expect(sayIn(':key[base-turn]{show=after}', plan)).toBe(
      `${Math.round(turn.time - at('downwind-key').time)} s`,
    );
    expect(sayIn(':key[final]{show=time}', plan)).toBe(
      `${Math.round(at('final').time - plan.track[0]!.time)} s`,
    );
  });

  it('counts time from the start of the track, and `after` from the downwind key', () => {
    const later = {
      ...plan,
      track: plan.track.map((sample) => ({ ...sample, time: sample.time + 40 })),
      keys: plan.keys.map((each) => ({ ...each, time: each.time + (each.id === 'downwind-key' ? 40 : 70) })),
    };
    expect(sayIn(':key[downwind-key]{show=time}', later)).toBe('0 s');
    expect(sayIn(':key[final]{show=after}', later)).toBe(`${Math.round(at('final').time + 30)} s`);
  });

  it('changes with the wind', () => {
    const calm = flyTrial({ wind: { from: 0, speed: 0 } });
    const strong = flyTrial({ wind: { from: degrees(238), speed: knots(15) } });
    const metres = (from: typeof plan) =>
      Number(/^\d+/.exec(sayIn(':key[base-turn]{show=past-abeam}', from))?.[0]);
    expect(metres(calm)).toBeGreaterThan(metres(strong));
  });

  it('names the nearest key where there is no such one', () => {
    const { messages } = renderBody('At :key[downwind-kee]{show=hight}.', plan);
    expect(messages[0]).toMatch(/^4:9 .*did you mean `downwind-key`\? It can be `overhead`, `downwind-key`/);
    expect(messages[1]).toMatch(/^4:23 .*did you mean `height`\?/);
  });

  it('says which keys this approach has', () => {
    expect(renderBody('At :key[overhead].', plan).messages).toEqual([
      expect.stringMatching(
        /^4:4 The 180 approach as it is flown here has no key position `overhead`; it has `downwind-key`,/,
      ),
    ]);
  });

  it('keeps `past-abeam` to the base turn, and `after` to what comes after', () => {
    expect(renderBody(':key[final]{show=past-abeam}', plan).messages).toEqual([
      expect.stringMatching(
        /^4:1 `past-abeam` is a figure of `base-turn` alone; for `final` write `show=along`/,
      ),
    ]);
    const early = { ...plan, keys: [{ ...at('final'), id: 'overhead' as const, time: -5 }, ...plan.keys] };
    const use = {
      attributes: { show: 'after' as const },
      label: 'overhead',
      children: [],
      context: contextOf(early),
      ordinal: 1,
    };
    expect(() => key.render(use)).toThrow('comes before the downwind key; write `show=time`');
  });
});
