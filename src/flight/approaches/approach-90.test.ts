import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import { RequestError } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';

const foot = 0.3048;

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
        const given = planApproach({ ...request, options: { '90': { baseDistance } } });
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
    const { track, keys } = planApproach(
      requestFor(id, { approach: '90', options: { '90': { baseDistance: 700 } } }),
    );
    expect(track[0]).toMatchObject({ along: -700, phase: 'base' });
    expect(Math.abs(track[0]!.across)).toBe(700);
    expect(keys[0]).toMatchObject({ id: 'base-key', along: -700 });
  });

  it('where neither height nor distance is asked for, has its turn to final complete 100 ft higher than it must be', () => {
    const final = (changes: Partial<PlanRequest>) =>
      planApproach(requestFor(id, { approach: '90', ...changes }));
    const plan = final({});
    expect(plan.made).toBe(true);
    expect(plan.solved.name).toBe('throttle-height');
    expect(plan.track[0]!.height).toBeCloseTo(plan.solved.value, 6);
    expect(plan.keys.find((key) => key.id === 'final')!.height / foot).toBeCloseTo(400, 0);
    const stricter = final({ minimums: { finalTurn: 450 * foot } });
    expect(stricter.keys.find((key) => key.id === 'final')!.height / foot).toBeCloseTo(550, 0);
    // So it is well above the floor of its own band.
    const [gate] = plan.gates;
    expect(gate!.plan - gate!.low!).toBeGreaterThan(50 * foot);
  });

  it('and takes the spacing of the pattern for its distance where that is far enough out', () => {
    const plan = planApproach(requestFor(id, { approach: '90', spacing: 1800, detail: 'flight' }));
    expect(plan.track[0]!.along).toBeCloseTo(-1800, 9);
  });

  it('costs more height from farther out, and against more wind', () => {
    const height = (baseDistance: number, knots: number) =>
      planApproach(
        requestFor(id, {
          approach: '90',
          options: { '90': { baseDistance } },
          wind: windOffRunway(0, knots),
          detail: 'flight',
        }),
      ).solved.value;
    expect(height(800, 0)).toBeGreaterThan(height(500, 0));
    expect(height(800, 8)).toBeGreaterThan(height(800, 0));
  });
});

describe('a 90 asked for both ways', () => {
  it('is refused: the height or the distance is found', () => {
    const request = requestFor('osier', {
      approach: '90',
      options: { '90': { baseDistance: 500 } },
      height: 150,
    });
    expect(() => planApproach(request)).toThrow(RequestError);
  });
});
