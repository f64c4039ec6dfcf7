import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, runwayHeading, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import type { Plan, TrackSample } from '../terms/plan.ts';

const foot = 0.3048;
const degrees = Math.PI / 180;
const winds = [
  ['calm', 0, 0],
  ['10 kt ahead', 0, 10],
  ['8 kt across', 90, 8],
  ['9 kt, 40 degrees from the left', -40, 9],
] as const;
const cases = aircraftIds.flatMap((id) => winds.map(([words, from, knots]) => ({ id, words, from, knots })));

const key = (plan: Plan, id: string) => plan.keys.find((each) => each.id === id)!;
const onCircle = ({ phase }: TrackSample) =>
  phase === 'circle' || phase === 'base-turn' || phase === 'final-turn';
const steepest = (samples: readonly TrackSample[]) =>
  samples.reduce((a, b) => (Math.abs(b.bank) > Math.abs(a.bank) ? b : a));

describe.each(cases)('the 360 of $id, $words', ({ id, from, knots }) => {
  const request = requestFor(id, { approach: '360', wind: windOffRunway(from, knots) });
  const plan = planApproach(request);
  const radius = plan.solved.value;
  const circle = plan.track.filter(onCircle);

  it('starts over the spot at 2,000 ft and finds the radius of its circle', () => {
    expect(plan.made).toBe(true);
    expect(plan.solved).toMatchObject({ name: 'circle-radius', unit: 'm' });
    expect(plan.track[0]).toMatchObject({ along: 0, across: 0 });
    expect(plan.track[0]!.height).toBeCloseTo(2000 * foot, 9);
  });

  it('holds both half circles on the ground within half a metre', () => {
    const side = plan.circuit === 'right' ? 1 : -1;
    const halves = [
      { samples: circle.filter(({ phase }) => phase === 'circle'), along: 0 },
      { samples: circle.filter(({ phase }) => phase !== 'circle'), along: key(plan, 'base-turn').along },
    ];
    for (const { samples, along } of halves) {
      expect(samples.length).toBeGreaterThan(20);
      for (const sample of samples) {
        const off = Math.hypot(sample.along - along, sample.across - side * radius) - radius;
        expect(Math.abs(off)).toBeLessThan(0.5);
      }
    }
  });

  it('completes the turn to final 100 ft higher than it must be', () => {
    expect(key(plan, 'final').height).toBeCloseTo(400 * foot, 1);
    expect(plan.cautions.map(({ code }) => code)).not.toContain('final-turn-low');
  });

  it('and 100 ft higher than the school asks, where that is more', () => {
    const asked = planApproach({ ...request, minimums: { finalTurn: 420 * foot }, detail: 'flight' });
    expect(key(asked, 'final').height).toBeCloseTo(520 * foot, 1);
  });

  it('is banked steepest with the wind behind, and shallowest against it', () => {
    if (knots === 0) return;
    const windTo = runwayHeading + from * degrees + Math.PI;
    // Only samples at about one height: the first half circle is flown on nearly all tracks relative to the wind.
    const withWind = (sample: TrackSample) => Math.cos(sample.heading - windTo);
    const byWind = [...circle].sort((a, b) => withWind(a) - withWind(b));
    expect(withWind(steepest(circle))).toBeGreaterThan(0.9 * withWind(byWind.at(-1)!));
    expect(Math.abs(byWind.at(-1)!.bank)).toBeGreaterThan(Math.abs(byWind[0]!.bank));
    expect(steepest(circle).groundspeed).toBeGreaterThan(byWind[0]!.groundspeed);
  });

  it('needs at each place the bank of its groundspeed and radius, in still air', () => {
    if (knots > 0) return;
    for (const { bank, groundspeed } of circle.slice(1, -1)) {
      expect(Math.tan(Math.abs(bank))).toBeCloseTo(groundspeed ** 2 / (9.80665 * radius), 2);
    }
  });

  it('given a bank finds the start height, and its steepest bank is that bank', () => {
    for (const bank of [25 * degrees, 35 * degrees]) {
      const banked = planApproach({ ...request, bank, detail: 'flight' });
      expect(banked.solved).toMatchObject({ name: 'start-height', unit: 'm' });
      expect(banked.made).toBe(true);
      expect(banked.track[0]!.height).toBeCloseTo(banked.solved.value, 6);
      expect(Math.abs(steepest(banked.track.filter(onCircle)).bank) / degrees).toBeCloseTo(bank / degrees, 1);
      expect(key(banked, 'final').height).toBeGreaterThanOrEqual(300 * foot);
      // And from that height the circle found is the same.
      const back = planApproach({ ...request, height: banked.solved.value, detail: 'flight' });
      expect(back.made).toBe(true);
      expect(Math.abs(steepest(back.track.filter(onCircle)).bank) / degrees).toBeCloseTo(bank / degrees, 1);
    }
  });
});

describe('the 360', () => {
  it('is flown round a larger circle from higher up, and steeper from lower down', () => {
    const from = (feet: number) =>
      planApproach(requestFor('osier', { approach: '360', height: feet * foot, detail: 'flight' }));
    expect(from(2400).solved.value).toBeGreaterThan(from(2000).solved.value);
    expect(Math.abs(steepest(from(1600).track.filter(onCircle)).bank)).toBeGreaterThan(
      Math.abs(steepest(from(2000).track.filter(onCircle)).bank),
    );
  });

  it('is not made from where there is no height for a circle', () => {
    expect(planApproach(requestFor('osier', { approach: '360', height: 500 * foot })).made).toBe(false);
  });
});
