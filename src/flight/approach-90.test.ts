import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../tests/flight-school.ts';
import { RequestError } from './errors.ts';
import { planApproach } from './planner.ts';

const winds = [
  ['calm', 0, 0],
  ['10 kt ahead', 0, 10],
  ['8 kt across', 90, 8],
  ['4 kt from behind', 180, 4],
] as const;

describe.each(aircraftIds)('the 90 of %s', (id) => {
  it.each(winds)(
    'has one height for a distance, and that distance for the height: %s',
    (_words, from, knots) => {
      const request = requestFor(id, { approach: '90', wind: windOffRunway(from, knots), detail: 'flight' });
      for (const baseDistance of [500, 900]) {
        const given = planApproach({ ...request, baseDistance });
        expect(given.solved).toMatchObject({ name: 'throttle-height', unit: 'm' });
        expect(given.made).toBe(true);
        const back = planApproach({ ...request, height: given.solved.value });
        expect(back.solved).toMatchObject({ name: 'base-distance', unit: 'm' });
        expect(back.made).toBe(true);
        expect(Math.abs(back.solved.value - baseDistance)).toBeLessThan(0.05);
      }
    },
  );

  it('starts at the base key, the spot 45 degrees off its track, at the distance asked for', () => {
    const { track, keys } = planApproach(requestFor(id, { approach: '90', baseDistance: 700 }));
    expect(track[0]).toMatchObject({ along: -700, phase: 'base' });
    expect(Math.abs(track[0]!.across)).toBe(700);
    expect(keys[0]).toMatchObject({ id: 'base-key', along: -700 });
  });

  it('takes the spacing of the pattern for its distance where none is asked for', () => {
    const plan = planApproach(requestFor(id, { approach: '90' }));
    expect(plan.track[0]!.along).toBeCloseTo(-plan.flown.spacing, 9);
  });

  it('costs more height from farther out, and against more wind', () => {
    const height = (baseDistance: number, knots: number) =>
      planApproach(
        requestFor(id, { approach: '90', baseDistance, wind: windOffRunway(0, knots), detail: 'flight' }),
      ).solved.value;
    expect(height(800, 0)).toBeGreaterThan(height(500, 0));
    expect(height(800, 8)).toBeGreaterThan(height(800, 0));
  });
});

describe('a 90 asked for both ways', () => {
  it('is refused: the height or the distance is found', () => {
    const request = requestFor('osier', { approach: '90', baseDistance: 500, height: 150 });
    expect(() => planApproach(request)).toThrow(RequestError);
  });
});
