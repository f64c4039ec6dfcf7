import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { sinOfGlide } from '../aircraft/glide.ts';
import { planApproach, workOut } from '../plan/planner.ts';
import type { Plan } from '../terms/plan.ts';
import { groundFigures, screenHeight } from './ground.ts';

describe.each(aircraftIds)('the ground that the landing of %s takes', (id) => {
  const request = requestFor(id, { wind: windOffRunway(10, 7) });
  const plan = planApproach(request);
  const figures = groundFigures(plan);

  it('from 50 ft is counted from where the path comes down through 15.24 m', () => {
    expect(screenHeight).toBeCloseTo(15.24, 12);
    const { track, touchdown } = plan;
    const above = track.findLast(({ height }) => height >= screenHeight)!;
    const below = track.find(({ height }) => height < screenHeight)!;
    const at = touchdown.along - figures.fromScreen!;
    expect(at).toBeGreaterThanOrEqual(above.along);
    expect(at).toBeLessThanOrEqual(below.along);
  });

  it('in still air is the glide down to the round-out, the round-out and the hold-off', () => {
    const calm = requestFor(id);
    const still = planApproach(calm);
    const { polar, speeds, aircraft } = workOut(calm).resolved.conditions;
    const sin = sinOfGlide(polar, speeds.approach, 1);
    const glide = (screenHeight - aircraft.roundOut.height) / Math.tan(Math.asin(sin));
    const start = still.track.find(({ phase }) => phase === 'round-out')!;
    const before = still.track[still.track.indexOf(start) - 1]!;
    expect(before.height).toBeCloseTo(aircraft.roundOut.height, 6);
    expect(groundFigures(still).fromScreen).toBeCloseTo(glide + still.touchdown.along - before.along, 1);
  });

  it('over 50 ft has the landing roll added', () => {
    expect(figures.overScreen).toBeCloseTo(figures.fromScreen! + figures.roll, 9);
  });

  it('leaves what is left of the runway beyond the spot, and of that what the roll leaves', () => {
    const { runway } = plan;
    expect(figures.leftAtTouchdown).toBeCloseTo(runway.length - runway.spot, 1);
    expect(figures.leftAtStop).toBeCloseTo(runway.length - runway.spot - figures.roll, 1);
  });

  it('has the roll of this wind, this air and this mass, not the one that the aircraft gives for a calm', () => {
    const { aircraft, flown, air } = plan;
    const tas = flown.touchdownSpeed * Math.sqrt(1.225 / air.density);
    // Half of the 7 kt from 10 degrees off the runway.
    const counted = 0.5 * 7 * Math.cos((10 * Math.PI) / 180) * (1852 / 3600);
    const rolls = aircraft.landingRoll * ((tas - counted) / aircraft.speeds.touchdown) ** 2;
    expect(figures.roll).toBeCloseTo(rolls, 3);
    const [hot, cold] = [313.15, 277.15].map(
      (temperature) => groundFigures(planApproach({ ...request, temperature })).roll,
    );
    expect(hot! / cold!).toBeGreaterThan(1.13);
    const behind = planApproach(requestFor(id, { wind: windOffRunway(180, 4) }));
    expect(groundFigures(behind).roll).toBeGreaterThan(1.3 * figures.roll);
  });

  it('is less the more wind is ahead', () => {
    const from = (knots: number) =>
      groundFigures(planApproach(requestFor(id, { wind: windOffRunway(0, knots) }))).fromScreen!;
    expect(from(5)).toBeLessThan(from(0));
    expect(from(10)).toBeLessThan(from(5));
  });
});

describe('the ground that a landing takes', () => {
  const plan = planApproach(requestFor('osier'));
  const shifted = (by: number): Plan => ({
    ...plan,
    track: plan.track.map((sample) => ({ ...sample, along: sample.along + by })),
    touchdown: { ...plan.touchdown, along: plan.touchdown.along + by },
  });

  it('leaves less the farther in the touchdown is, and takes as much', () => {
    const [own, long] = [groundFigures(plan), groundFigures(shifted(150))];
    expect(long.fromScreen).toBeCloseTo(own.fromScreen!, 9);
    expect(long.leftAtTouchdown).toBeCloseTo(own.leftAtTouchdown - 150, 9);
    expect(long.leftAtStop).toBeCloseTo(own.leftAtStop - 150, 9);
    expect(groundFigures(shifted(400)).leftAtStop).toBeLessThan(0);
  });

  it('is not given where the path starts under 50 ft', () => {
    const track = plan.track.filter(({ height }) => height < 15);
    const { fromScreen, overScreen } = groundFigures({ ...plan, track });
    expect(fromScreen).toBeUndefined();
    expect(overScreen).toBeUndefined();
  });
});
