import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';

const foot = 0.3048;

describe.each(aircraftIds)('the 180 of %s', (id) => {
  it('starts abeam the spot at the spacing, and turns base where it says', () => {
    const plan = planApproach(requestFor(id, { wind: windOffRunway(30, 8), spacing: 700 }));
    expect(plan.track[0]).toMatchObject({ along: 0, phase: 'downwind' });
    expect(Math.abs(plan.track[0]!.across)).toBe(700);
    const turn = plan.keys.find(({ id }) => id === 'base-turn')!;
    expect(-turn.along).toBeCloseTo(plan.solved.value, 6);
    expect(Math.abs(turn.across)).toBeCloseTo(700, 6);
  });

  it('in still air goes out about half of what the glide has over the way across', () => {
    for (const feet of [900, 1200, 1500]) {
      const plan = planApproach(requestFor(id, { height: feet * foot, detail: 'flight' }));
      const { flown, solved } = plan;
      const half = (feet * foot * flown.glideRatio - flown.spacing) / 2;
      expect(plan.made).toBe(true);
      expect(solved.value).toBeGreaterThan(0.7 * half);
      expect(solved.value).toBeLessThan(half);
    }
  });

  it('100 ft higher goes out farther by half the glide of them', () => {
    const out = (feet: number) =>
      planApproach(requestFor(id, { height: feet * foot, detail: 'flight' })).solved.value;
    const { glideRatio } = planApproach(requestFor(id, { detail: 'flight' })).flown;
    expect(out(1300) - out(1200)).toBeCloseTo((100 * foot * glideRatio) / 2, -1);
  });

  it('is one continuous turn where the spacing leaves no room for two, at the bank that fits', () => {
    const plan = planApproach(requestFor(id, { spacing: 130, height: 500 * foot }));
    expect(plan.made).toBe(true);
    expect(plan.track.some(({ phase }) => phase === 'base')).toBe(false);
    const banks = plan.track.filter(({ phase }) => phase === 'final-turn').map(({ bank }) => Math.abs(bank));
    expect(Math.max(...banks)).toBeLessThanOrEqual(plan.aircraft.turns.limit + 1e-9);
    expect(Math.abs(plan.touchdown.across)).toBeLessThan(0.1);
  });
});
