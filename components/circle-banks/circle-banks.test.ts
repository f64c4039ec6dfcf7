import { describe, expect, it } from 'vitest';
import { degrees, flyTrial, knots, renderBody } from '../trial-packet.ts';
import { eighthsOf } from './circle-banks.ts';

// Landing on 238 degrees, left-hand, in a wind straight down the runway.
const asked = { approach: '360', height: 500, wind: { from: degrees(238), speed: knots(10) } } as const;
const plan = flyTrial(asked);

describe('::circle-banks', () => {
  it('has a row for each eighth of the circle, but for those at which the wings are level', () => {
    const { html, messages } = renderBody('::circle-banks', plan);
    expect(messages).toEqual([]);
    expect(html).toMatch(
      /^<table class="circle-banks" id="circle-banks-1"><caption><span [^>]*>Table 1<\/span> The bank round/,
    );
    const rows = [...html.matchAll(/<tr><th scope="row">(.*?)<\/th>(.*?)<\/tr>/g)];
    expect(rows).toHaveLength(6);
    const base = eighthsOf(plan)[4]!.at;
    expect(rows[4]![0]).toContain(`>${Math.round(Math.abs(base.bank) / degrees(1))}°</td>`);
    expect(rows[4]![0]).toContain(`>${Math.round(base.height / 0.3048 / 10) * 10} ft</td>`);
    expect(html).toContain('engine idling');
  });

  it('takes each where the circle has it: on the ground, by its centre', () => {
    const radius = plan.solved.value;
    const at = eighthsOf(plan).map(({ at }) => at);
    for (const [i, eighth] of [1, 2, 3].entries()) {
      // The first half turns left about a centre one radius to the left of the spot.
      const angle = (eighth * Math.PI) / 4;
      const off = Math.hypot(
        at[i]!.along - radius * Math.sin(angle),
        at[i]!.across + radius * (1 - Math.cos(angle)),
      );
      // Half a second at most, at the groundspeed there.
      expect(off).toBeLessThan(at[i]!.groundspeed / 2);
    }
    expect(at[4]!.phase).toMatch(/turn/);
    expect(Math.abs(at[4]!.across + radius)).toBeLessThan(at[4]!.groundspeed / 2);
  });

  it('needs the bank of its groundspeed there, on the circle: steeper with the wind behind', () => {
    const rows = eighthsOf(plan).map(({ at }) => at);
    expect(rows[2]!.groundspeed).toBeGreaterThan(rows[0]!.groundspeed);
    expect(Math.abs(rows[2]!.bank)).toBeGreaterThan(Math.abs(rows[0]!.bank));
    expect(Math.abs(rows[3]!.bank)).toBeGreaterThan(Math.abs(rows[5]!.bank));
  });

  it('is the same from either side', () => {
    const right = flyTrial({ ...asked, circuit: 'right' });
    const banks = (of: typeof plan) => eighthsOf(of).map(({ at }) => Math.abs(at.bank));
    const rounded = (bank: number) => Math.round(bank * 100);
    expect(banks(right).map(rounded)).toEqual(banks(plan).map(rounded));
  });

  it('is refused by an approach that is no circle', () => {
    expect(renderBody('::circle-banks', flyTrial()).messages).toEqual([
      expect.stringMatching(/^4:1 Only the 360 is a circle held on the ground/),
    ]);
  });
});
