import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { degrees, flyTrial, knots, renderBody, sayIn } from '../trial-packet.ts';

const plan = flyTrial();

function blowing(runway: number, from: number, kt: number): Plan {
  return {
    ...plan,
    runway: { ...plan.runway, heading: degrees(runway) },
    flown: { ...plan.flown, surfaceWind: { from: degrees(from), speed: knots(kt) } },
  };
}

describe(':wind[…]', () => {
  it('says the surface wind', () => {
    expect(sayIn(':wind[surface]', plan)).toBe('270° 10 kt');
    expect(sayIn(':wind[from]', plan)).toBe('270°');
    expect(sayIn(':wind[speed]', plan)).toBe('10 kt');
  });

  it('splits it as the crosswind chart of the handbook does', () => {
    // FAA-H-8083-25, Aircraft Performance, crosswind and headwind component chart, sample problem: runway 17, wind
    // 140 degrees at 25 knots: headwind 22, crosswind 13 (example from memory; its figures follow from the cosine and
    // sine of 30 degrees).
    const chart = blowing(170, 140, 25);
    expect(sayIn(':wind[headwind]', chart)).toBe('headwind 22 kt');
    expect(sayIn(':wind[crosswind]', chart)).toBe('13 kt from the left');
  });

  it('names the side, and a tailwind a tailwind', () => {
    expect(sayIn(':wind[crosswind]', blowing(170, 200, 25))).toBe('13 kt from the right');
    expect(sayIn(':wind[headwind]', blowing(360, 180, 3))).toBe('tailwind 3 kt');
    expect(sayIn(':wind[crosswind]', blowing(10, 360, 20))).toBe('3 kt from the left');
  });

  it('has words for nothing', () => {
    expect(sayIn(':wind[headwind]', blowing(90, 360, 10))).toBe('no headwind');
    expect(sayIn(':wind[crosswind]', blowing(90, 90, 10))).toBe('no crosswind');
    expect(sayIn(':wind[surface]', blowing(90, 90, 0))).toBe('calm');
    expect(sayIn(':wind[from]', blowing(90, 90, 0.3))).toBe('calm');
  });

  it('says the wind at the height of the downwind key', () => {
    // The power law with the airfield's exponent 0.143: 10 kt x (304.8/10)^0.143 = 16.3 kt.
    expect(sayIn(':wind[at-key]', plan)).toBe('270° 16 kt');
    expect(sayIn(':wind[at-key]', flyTrial({ windProfile: 'uniform' }))).toBe('270° 10 kt');
  });

  it('says it as it was flown where the wind turns with height', () => {
    // 1,000 ft is where the turning ends; a quarter of a degree is missing because the corner is rounded.
    const { airfield } = plan;
    const veering = (veer: number) => flyTrial({ airfield: { ...airfield, windVeer: degrees(veer) } });
    expect(sayIn(':wind[at-key]', veering(20))).toBe('290° 16 kt');
    expect(sayIn(':wind[at-key]', veering(-20))).toBe('250° 16 kt');
    expect(sayIn(':wind[surface]', veering(20))).toBe('270° 10 kt');
    // 157.4 m is half way up: the figure is not taken from the listed heights beside it.
    const half = { airfield: { ...airfield, windVeer: degrees(80) }, height: 157.4, spacing: 250 };
    expect(sayIn(':wind[at-key]', flyTrial(half))).toMatch(/^310° /);
  });

  it('lists what it can say', () => {
    expect(renderBody(':wind[crosswnd]', plan).messages).toEqual([
      expect.stringMatching(/^4:7 .*did you mean `crosswind`\? It can be `surface`/),
    ]);
  });
});
