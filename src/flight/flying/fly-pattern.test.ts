import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, runwayHeading, windOffRunway } from '../../../tests/flight-school.ts';
import { workOut } from '../plan/planner.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { type FlownPattern, flyPattern } from './fly-pattern.ts';

function fly(request: PlanRequest, step?: number): FlownPattern {
  const { solution, resolved } = workOut(request);
  return flyPattern(solution!.closed.procedure, resolved.conditions, runwayHeading, step);
}
const cases = aircraftIds.flatMap((id) =>
  (['90', '180', '360', 'spiral'] as const).map((approach) => ({ id, approach })),
);

describe.each(cases)('the $approach of $id flown to the ground', ({ id, approach }) => {
  const request = requestFor(id, { approach, wind: windOffRunway(25, 9) });
  const pattern = fly(request);
  const { keys, flight, aimPoint, levelAt } = pattern;

  it('passes its keys one after another, each lower, and lies at each where the track does', () => {
    const flown = keys.filter((key) => key.id !== 'aim-point');
    for (let i = 1; i < flown.length; i++) {
      expect(flown[i]!.time, flown[i]!.id).toBeGreaterThanOrEqual(flown[i - 1]!.time);
      expect(flown[i]!.height, flown[i]!.id).toBeLessThanOrEqual(flown[i - 1]!.height);
    }
    for (const { id, time, along, across, height } of flown) {
      const after = flight.track.find((sample) => sample.time >= time - 1e-9)!;
      // Samples lie at most 0.5 s apart.
      expect(Math.hypot(after.along - along, after.across - across), id).toBeLessThan(25);
      expect(Math.abs(after.height - height), id).toBeLessThan(4);
    }
    expect(keys.at(-1)).toMatchObject({ id: 'touchdown' });
  });

  it('has its base key where the spot lies 45 degrees off the track, or wings level after that', () => {
    const base = keys.find((key) => key.id === 'base-key')!;
    const level = flight.track.find(({ phase }) => phase === 'base');
    if (level && Math.abs(level.across) > Math.abs(level.along)) {
      expect(Math.abs(base.along)).toBeCloseTo(Math.abs(base.across), 0);
    } else {
      expect(Math.abs(base.across)).toBeLessThanOrEqual(Math.abs(base.along) + 1);
    }
  });

  it('has its aim point where the path of final would meet the ground, short of the level and the touchdown', () => {
    const final = flight.track.filter(({ phase }) => phase === 'final');
    const [a, b] = [final.at(-4)!, final.at(-1)!];
    const slope = (b.along - a.along) / (a.height - b.height);
    expect(Math.abs(aimPoint! - (b.along + b.height * slope))).toBeLessThan(0.5);
    expect(aimPoint!).toBeLessThan(levelAt!);
    expect(levelAt!).toBeLessThan(flight.track.at(-1)!.along);
    expect(keys.find((key) => key.id === 'aim-point')).toMatchObject({ along: aimPoint, height: 0 });
  });

  it('ends at the same place with steps of a tenth of a second', () => {
    const fine = fly(request, 0.1).flight.track.at(-1)!;
    const own = flight.track.at(-1)!;
    expect(Math.hypot(fine.along - own.along, fine.across - own.across)).toBeLessThan(0.05);
    expect(Math.abs(fine.time - own.time)).toBeLessThan(0.01);
  });
});

describe('an approach that meets the ground before final', () => {
  it('has no aim point, no level place, and its touchdown where that is', () => {
    const { solution, resolved } = workOut(requestFor('osier'));
    const { start, legs } = solution!.closed.procedure;
    const low = { start: { ...start, height: 60 }, legs };
    const { aimPoint, levelAt, keys } = flyPattern(low, resolved.conditions, runwayHeading);
    expect(aimPoint).toBeUndefined();
    expect(levelAt).toBeUndefined();
    expect(keys.at(-1)).toMatchObject({ id: 'touchdown' });
    expect(keys.at(-1)!.height).toBeCloseTo(0, 5);
    expect(keys.map(({ id }) => id)).not.toContain('final');
  });
});
