import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planToJson } from '../src/export/plan-json.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import type { Plan } from '../src/flight/terms/plan.ts';
import { aircraftIds, requestFor, windOffRunway } from './flight-school.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const asked = fc.record({
  id: fc.constantFrom(...aircraftIds),
  power: fc.constantFrom('idle' as const, 'stopped' as const),
  circuit: fc.constantFrom('left' as const, 'right' as const),
  windFrom: between(-180, 180),
  knots: between(0, 14),
});
type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never;

const fly = (approach: Plan['approach'], { id, windFrom, knots, ...rest }: Asked) =>
  planApproach(requestFor(id, { ...rest, approach, wind: windOffRunway(windFrom, knots) }));

describe.each(['90', '360', 'spiral'] as const)('every approach %s', (approach) => {
  it('is flown downhill in rising time to the spot it says it makes, and is the mirror image of the other hand', () => {
    let made = 0;
    fc.assert(
      fc.property(asked, (one) => {
        const plan = fly(approach, one);
        const { track } = plan;
        for (let i = 1; i < track.length; i++) {
          const [before, after] = [track[i - 1]!, track[i]!];
          expect(after.height).toBeLessThanOrEqual(before.height);
          expect(after.time).toBeGreaterThan(before.time);
          expect(after.time - before.time).toBeLessThanOrEqual(0.5 + 1e-9);
        }
        expect(JSON.stringify(planToJson(plan))).toBe(
          JSON.stringify(planToJson(plan), (_key, value) => {
            if (typeof value === 'number' && !Number.isFinite(value)) return 'not a number';
            return value;
          }),
        );
        expect(plan.cautions.some(({ code }) => code === 'beyond-reach')).toBe(!plan.made);
        const circuit = one.circuit === 'left' ? 'right' : 'left';
        const mirrored = fly(approach, { ...one, circuit, windFrom: -one.windFrom });
        expect(mirrored.made).toBe(plan.made);
        expect(mirrored.track).toHaveLength(track.length);
        const apart = track.map((sample, i) => {
          const other = mirrored.track[i]!;
          return Math.hypot(sample.along - other.along, sample.across + other.across);
        });
        expect(Math.max(...apart)).toBeLessThan(1e-6);
        if (!plan.made) return;
        made++;
        expect(Math.abs(plan.touchdown.along)).toBeLessThan(0.1);
        expect(Math.abs(plan.touchdown.across)).toBeLessThan(0.1);
        expect(track.at(-1)!.phase).toBe('hold-off');
      }),
      { numRuns: 15, seed: 1903, endOnFailure: true },
    );
    expect(made).toBeGreaterThan(5);
  });
});
