import { describe, expect, it } from 'vitest';
import { type FaultPlan, planForFaults } from '../src/flight/faults/fault-plan.ts';
import { flyFault } from '../src/flight/faults/fly-fault.ts';
import type { FaultChange, FaultFlown } from '../src/flight/terms/fault.ts';
import type { PlanRequest } from '../src/flight/terms/plan.ts';
import { readAircraft } from '../src/school/read.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../src/units/factors.ts';
import { requestFor, windOffRunway } from './flight-school.ts';

// Which way each fault goes, for every aircraft of the fleet over a grid of winds: from ahead, from either side, calm.

const kt = metresPerSecondPerKnot;
const deg = radiansPerDegree;
const fleet = await Promise.all(
  ['osier-15', 'sallow-10', 'withy-80'].map(async (file) => {
    const path = new URL(`../lessons/fleet/${file}.yaml`, import.meta.url).pathname;
    return { file, aircraft: (await readAircraft(path)).value! };
  }),
);
const winds = [
  [0, 0],
  [0, 8],
  [0, 14],
  [-40, 10],
  [40, 10],
] as const;

const conditions = fleet.flatMap(({ file, aircraft }) =>
  winds.map(([off, speed]) => ({ file, off, speed, aircraft })),
);

function flownWith(plan: FaultPlan, change: FaultChange): FaultFlown {
  const flight = flyFault(plan, change);
  if (!flight.flown) throw new Error(`${change.kind}: ${flight.reason}`);
  return flight;
}

describe.each(conditions)(
  '$file with $speed kt from $off degrees off the nose',
  ({ aircraft, off, speed }) => {
    const request: PlanRequest = { ...requestFor('osier'), aircraft, wind: windOffRunway(off, speed) };
    const plan = planForFaults(request);
    const along = (change: FaultChange) => flownWith(plan, change).end.along;

    it('ends shorter the wider the downwind leg, and farther the closer', () => {
      const ends = [0.7, 1, 1.2, 1.4].map((factor) => along({ kind: 'spacing', amount: { factor } }));
      expect(ends).toEqual([...ends].sort((a, b) => b - a));
      expect(ends[1]).toBeCloseTo(0, 1);
    });
    it('ends shorter the later the base turn, and farther the earlier', () => {
      const ends = [-3, 0, 3, 6].map((seconds) => along({ kind: 'base-turn', seconds }));
      expect(ends).toEqual([...ends].sort((a, b) => b - a));
    });
    it('ends shorter with more wind at the same mark, and farther with less', () => {
      expect(along({ kind: 'wind', amount: { by: 4 * kt } })).toBeLessThan(-5);
      if (speed > 4) expect(along({ kind: 'wind', amount: { by: -4 * kt } })).toBeGreaterThan(5);
    });
    it('ends shorter after the count of a still day: the tailwind on downwind not allowed for', () => {
      const end = along({ kind: 'base-turn-as-in-still-air' });
      if (speed === 0) expect(end).toBeCloseTo(0, 1);
      else expect(end).toBeLessThan(-20);
    });
    it('ends shorter with the drift on base not corrected, where the wind is ahead on final', () => {
      const end = along({ kind: 'base-drift' });
      if (speed === 0) expect(end).toBeCloseTo(0, 1);
      else expect(end).toBeLessThan(-10);
    });
    it('ends shorter the slower than best the glide, and the faster once beyond what the wind pays for', () => {
      const [slower, slow] = [0.92, 0.96].map((factor) => along({ kind: 'glide-speed', factor }));
      expect(slower).toBeLessThan(-10);
      expect(slower).toBeLessThan(slow!);
      expect(slow).toBeLessThan(0);
      const [fast, faster, fastest] = [1.15, 1.25, 1.35].map((factor) =>
        along({ kind: 'glide-speed', factor }),
      );
      expect(faster).toBeLessThan(fast!);
      expect(fastest).toBeLessThan(faster!);
      if (speed === 0) expect(faster).toBeLessThan(-50);
    });
    it('ends shorter with the engine stopped', () => {
      expect(along({ kind: 'power-stopped' })).toBeLessThan(-30);
    });
    it('ends farther from a glide begun fast', () => {
      expect(along({ kind: 'start-speed', amount: { by: 8 * kt } })).toBeGreaterThan(5);
    });
    it('ends to the far side of the centreline with a shallow turn to final, to the near side with a steep one', () => {
      // A left-hand pattern: the far side is the right.
      expect(
        flownWith(plan, { kind: 'final-turn-bank', amount: { by: -10 * deg } }).end.across,
      ).toBeGreaterThan(5);
      expect(flownWith(plan, { kind: 'final-turn-bank', amount: { by: 10 * deg } }).end.across).toBeLessThan(
        -1.5,
      );
    });
    it('ends shorter from lower on final, and farther from higher', () => {
      expect(along({ kind: 'final-height', by: -10 })).toBeLessThan(-20);
      expect(along({ kind: 'final-height', by: 10 })).toBeGreaterThan(20);
    });
    it('floats farther the faster it comes to final', () => {
      const floats = [0, 5, 10].map(
        (knots) =>
          flownWith(plan, { kind: 'final-speed', amount: { by: knots * kt } }).landing.holdOff!.distance,
      );
      expect(floats).toEqual([...floats].sort((a, b) => a - b));
    });
    it('touches the farther past the spot the faster the round-out begins at its place', () => {
      const planned = plan.pattern.flight.track.findLast(({ phase }) => phase === 'final')!;
      const places = [4, 8, 12].map((knots) => {
        const fault = flownWith(plan, { kind: 'round-out-speed', amount: { by: knots * kt } });
        const begins = fault.track.findLast(({ phase }) => phase === 'final')!;
        expect(begins.along).toBeCloseTo(planned.along, 0);
        expect(begins.eas - planned.eas).toBeCloseTo(knots * kt, 1);
        expect(fault.track[0]!.height).toBeGreaterThan(0);
        return fault.end.along;
      });
      expect(places[0]).toBeGreaterThan(5);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    });
    it('has less in hand over the stall the slower the glide and the steeper the turn', () => {
      const slow = flownWith(plan, { kind: 'glide-speed', factor: 0.92 }).stall;
      // 0.92 of the speed; and the wind that drops in the last 50 ft takes as much from it although it is less, and
      // so takes the greater share.
      const share = slow.flown.straight! / slow.planned.straight!;
      expect(share).toBeLessThan(0.921);
      expect(share).toBeGreaterThan(0.905);
      const steep = flownWith(plan, { kind: 'final-turn-bank', amount: { by: 10 * deg } }).stall;
      expect(steep.flown.turning).toBeLessThan(steep.planned.turning!);
    });
    it('touches short of the spot where the wheels are put down fast', () => {
      expect(along({ kind: 'touchdown-speed', amount: { factor: 1.04 } })).toBeLessThan(-1);
    });
    it('drops from the more height the higher the round-out', () => {
      const heights = [1, 1.5, 2].map(
        (factor) => flownWith(plan, { kind: 'round-out-height', amount: { factor } }).end.height,
      );
      expect(heights).toEqual([...heights].sort((a, b) => a - b));
    });
    it('drifts across the runway the way the wind blows', () => {
      const { across } = flownWith(plan, { kind: 'touchdown-drift' }).end;
      if (off === 0 || speed === 0) expect(across).toBeCloseTo(0, 1);
      else expect(across * -Math.sign(off)).toBeGreaterThan(1);
    });
  },
);

describe('a mirror image', () => {
  it('of every fault ends at the same place on the other side', () => {
    const left = planForFaults(requestFor('osier', { circuit: 'left', wind: windOffRunway(-30, 10) }));
    const right = planForFaults(requestFor('osier', { circuit: 'right', wind: windOffRunway(30, 10) }));
    for (const change of [
      { kind: 'base-drift' },
      { kind: 'final-turn-bank', amount: { by: 10 * deg } },
      { kind: 'throttle', seconds: 4 },
      { kind: 'glide-speed-wandering', amplitude: 0.1, period: 9 },
      { kind: 'touchdown-drift' },
    ] satisfies FaultChange[]) {
      const [a, b] = [flownWith(left, change), flownWith(right, change)];
      expect(a.end.along, change.kind).toBeCloseTo(b.end.along, 2);
      expect(a.end.across, change.kind).toBeCloseTo(-b.end.across, 2);
    }
  });
});
