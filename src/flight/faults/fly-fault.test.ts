import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import { standardGravity } from '../air/constants.ts';
import type { FaultChange, FaultFlown } from '../terms/fault.ts';
import { planForFaults } from './fault-plan.ts';
import { flyFault, type LandedBy } from './fly-fault.ts';

const kt = metresPerSecondPerKnot;
const deg = radiansPerDegree;
const fresh = windOffRunway(-28, 12);

function flownWith(change: FaultChange, wind = fresh, landing?: LandedBy): FaultFlown {
  const flight = flyFault(planForFaults(requestFor('osier', { wind })), change, landing);
  if (!flight.flown) throw new Error(String(flight.reason));
  return flight;
}

describe('a fault of no size', () => {
  const none: FaultChange[] = [
    { kind: 'spacing', amount: { factor: 1 } },
    { kind: 'base-turn', seconds: 0 },
    { kind: 'wind', amount: { by: 0 } },
    { kind: 'glide-speed', factor: 1 },
    { kind: 'glide-speed-wandering', amplitude: 0, period: 10 },
    { kind: 'final-turn-bank', amount: { by: 0 } },
    { kind: 'throttle', seconds: 0 },
    { kind: 'start-speed', amount: { by: 0 } },
    { kind: 'mass', amount: { factor: 1 } },
    { kind: 'final-speed', amount: { by: 0 } },
    { kind: 'final-height', by: 0 },
    { kind: 'round-out-speed', amount: { by: 0 } },
    { kind: 'round-out-height', amount: { factor: 1 } },
    { kind: 'round-out-load-factor', amount: { by: 0 } },
    { kind: 'touchdown-speed', amount: { factor: 1 } },
  ];
  for (const id of ['osier', 'withy'] as const) {
    for (const approach of ['90', '180', '360', 'spiral'] as const) {
      const plan = planForFaults(requestFor(id, { approach, wind: fresh }));
      it.each(none)(`of the kind $kind lands the ${id} at the spot of its ${approach}`, (change) => {
        const flight = flyFault(plan, change);
        if (!flight.flown) {
          expect([
            'no-base-turn',
            'no-downwind-distance',
            'circle-to-final',
            'begins-in-circle',
            'no-base-leg',
          ]).toContain(flight.reason);
          return;
        }
        expect(Math.hypot(flight.end.along, flight.end.across)).toBeLessThan(0.1);
        expect(flight.landing.how).toBe('touched');
        expect(flight.end.time).toBeGreaterThan(10);
        expect(flight.shows).toBeUndefined();
      });
    }
  }
  it('is flown on a single turn too', () => {
    const plan = planForFaults(requestFor('osier', { spacing: 130, wind: windOffRunway(0, 5) }));
    expect(plan.procedure.legs.some((leg) => leg.kind === 'turn' && !leg.rollOut)).toBe(true);
    const flight = flyFault(plan, { kind: 'final-turn-bank', amount: { by: 0 } });
    expect(flight.flown && Math.hypot(flight.end.along, flight.end.across)).toBeLessThan(0.1);
  });
  it('is what drift and a still-air count come to in still air', () => {
    const calm = windOffRunway(0, 0);
    for (const kind of ['base-drift', 'base-turn-as-in-still-air', 'touchdown-drift'] as const) {
      const { end } = flownWith({ kind }, calm);
      expect(Math.hypot(end.along, end.across), kind).toBeLessThan(0.1);
    }
  });
});

describe('a fault in the pattern', () => {
  it('of spacing costs in still air what it adds to the way, and the key shows it at once', () => {
    const wide = flownWith({ kind: 'spacing', amount: { by: 100 } }, windOffRunway(0, 0));
    // Base leg is 100 m longer at the best glide, final flown at a steeper one: 100 m on base is the same height,
    // and that height is worth a little less on final.
    expect(wide.end.along).toBeLessThan(-90);
    expect(wide.end.along).toBeGreaterThan(-100);
    expect(Math.abs(wide.end.across)).toBeLessThan(0.1);
    expect(wide.shows?.at).toBe('downwind-key');
    expect(Math.abs(wide.shows?.across ?? 0)).toBeCloseTo(100, 6);
  });
  it('of a base turn 6 s late costs in still air twice the way of 6 s, final being a little steeper', () => {
    const late = flownWith({ kind: 'base-turn', seconds: 6 }, windOffRunway(0, 0));
    const base = late.differences.find(({ at }) => at === 'base-turn')!;
    expect(base.time).toBeCloseTo(6, 4);
    expect(base.along).toBeLessThan(0);
    expect(late.end.along / base.along!).toBeGreaterThan(1.9);
    expect(late.end.along / base.along!).toBeLessThan(2);
  });
  it('of a steep turn to final costs the stall margin that the load factor says', () => {
    // Stall speed grows with the root of the load factor, 1/cos(bank) (FAA-H-8083-3C, chapter 3; from memory).
    const steep = flownWith({ kind: 'final-turn-bank', amount: { by: 15 * deg } });
    const ratio = steep.stall.planned.turning! / steep.stall.flown.turning!;
    expect(ratio).toBeCloseTo(Math.sqrt(Math.cos(30 * deg) / Math.cos(45 * deg)), 3);
  });
  it('of a shallow turn to final ends through the centreline, on the far side of a left-hand pattern', () => {
    const shallow = flownWith({ kind: 'final-turn-bank', amount: { to: 15 * deg } });
    expect(shallow.end.across).toBeGreaterThan(20);
    const steep = flownWith({ kind: 'final-turn-bank', amount: { to: 45 * deg } });
    expect(steep.end.across).toBeLessThan(-5);
  });
  it('of a wandering speed keeps its mean: at best glide it costs second order only', () => {
    const small = flownWith(
      { kind: 'glide-speed-wandering', amplitude: 0.02, period: 10 },
      windOffRunway(0, 0),
    );
    const large = flownWith(
      { kind: 'glide-speed-wandering', amplitude: 0.1, period: 10 },
      windOffRunway(0, 0),
    );
    expect(Math.abs(small.end.along)).toBeLessThan(25);
    const eas = large.track.filter(({ phase }) => phase === 'downwind').map((sample) => sample.eas);
    const planned = large.track[0]!.eas;
    expect(Math.max(...eas) / planned).toBeCloseTo(1.1, 2);
    expect(Math.min(...eas) / planned).toBeCloseTo(0.9, 2);
  });
  it('of a glide begun fast is worth at most its energy height along the best glide', () => {
    const fast = flownWith({ kind: 'start-speed', amount: { by: 12 * kt } }, windOffRunway(0, 0));
    const plan = planForFaults(requestFor('osier', { wind: windOffRunway(0, 0) }));
    const { polar, tasOverEas } = plan.resolved.conditions;
    const energy =
      (tasOverEas(300) ** 2 * ((polar.speed + 12 * kt) ** 2 - polar.speed ** 2)) / (2 * standardGravity);
    expect(fast.end.along).toBeGreaterThan(0);
    expect(fast.end.along).toBeLessThan(energy * polar.ratio);
    expect(fast.end.along).toBeGreaterThan(0.4 * energy * polar.ratio);
  });
  it('of a late throttle passes the key level', () => {
    const late = flownWith({ kind: 'throttle', seconds: 5 });
    const level = late.track.filter(({ time }) => time <= 5);
    expect(level.length).toBeGreaterThan(8);
    for (const { height } of level) expect(height).toBeCloseTo(late.track[0]!.height, 9);
    const base = late.differences.find(({ at }) => at === 'base-turn')!;
    expect(base.time).toBeCloseTo(5, 4);
    expect(base.heightThere).toBeGreaterThan(0);
  });
  it('that would stall is not flown, and says so', () => {
    const plan = planForFaults(requestFor('osier', { wind: fresh }));
    const flight = flyFault(plan, { kind: 'glide-speed', factor: 0.7 });
    expect(flight).toMatchObject({ flown: false, reason: expect.stringMatching(/stalls/) });
  });
  it('that an approach has no place for is not flown, and says so', () => {
    const of90 = planForFaults(requestFor('osier', { approach: '90', wind: fresh }));
    expect(flyFault(of90, { kind: 'base-turn', seconds: 3 })).toMatchObject({ flown: false });
    const of360 = planForFaults(requestFor('osier', { approach: '360', wind: fresh }));
    expect(flyFault(of360, { kind: 'spacing', amount: { factor: 1.2 } })).toMatchObject({ flown: false });
  });
  it('keeps samples at most half a second apart, as a plan does', () => {
    for (const change of [
      { kind: 'base-drift' },
      { kind: 'throttle', seconds: 5 },
      { kind: 'glide-speed-wandering', amplitude: 0.1, period: 8 },
    ] satisfies FaultChange[]) {
      const { track } = flownWith(change);
      for (let i = 1; i < track.length; i++) {
        expect(track[i]!.time - track[i - 1]!.time).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
  });
});

describe('a fault of the landing', () => {
  it('of a high round-out leaves a drop of the height that was too much', () => {
    const twice: FaultChange = { kind: 'round-out-height', amount: { factor: 2 } };
    const calm = flownWith(twice, windOffRunway(0, 0));
    // Begun 12 ft higher with the same pull, level 12 ft higher.
    expect(calm.end.height).toBeCloseTo(12 * 0.3048, 1);
    const high = flownWith(twice);
    expect(high.landing.how).toBe('dropped');
    // In a wind the last 12 ft of the planned final have taken some of the airspeed; the depth of a round-out goes with its square:
    // a radius of V^2 / (g (n - 1)), on which the path comes level.
    const begins = (flight: FaultFlown) => flight.track.findLast(({ phase }) => phase === 'final')!;
    const plain = flownWith({ kind: 'round-out-height', amount: { factor: 1 } });
    const depth = begins(plain).height - plain.landing.level!.height;
    const faster = (begins(high).eas / begins(plain).eas) ** 2 - 1;
    expect(faster).toBeGreaterThan(0.03);
    expect(high.end.height).toBeCloseTo(12 * 0.3048 - depth * faster, 1);
    expect(high.landing).toHaveProperty('beyond');
    const seen = flownWith({ kind: 'round-out-height', amount: { factor: 2 } }, fresh, 'noticed');
    expect(seen.landing.how).toBe('touched');
    const planned = flownWith({ kind: 'round-out-height', amount: { factor: 1 } });
    expect(
      'sink' in seen.landing && 'sink' in planned.landing && seen.landing.sink / planned.landing.sink,
    ).toBeGreaterThan(2);
  });
  it('of a late round-out strikes the ground before it is level, with less sink than the glide had', () => {
    const late = flownWith({ kind: 'round-out-height', amount: { factor: 0.5 } });
    const glide = late.track.findLast(({ phase }) => phase === 'final')!.sink;
    expect(late.landing.how).toBe('struck');
    expect('sink' in late.landing && late.landing.sink).toBeLessThan(glide);
    expect('sink' in late.landing && late.landing.sink).toBeGreaterThan(0);
  });
  it('of a round-out begun late pulls as planned: who does not know it is late does not pull harder', () => {
    for (const factor of [2, 0.8, 0.5]) {
      const { landing } = flownWith({ kind: 'round-out-height', amount: { factor } });
      expect(landing.pull).toBe(planForFaults(requestFor('osier', { wind: fresh })).asked.pull);
    }
  });
  it('of too rapid a pull balloons, by no more than the speed that it gives away', () => {
    const rapid = flownWith({ kind: 'round-out-load-factor', amount: { by: 0.2 } });
    const { balloon, level } = rapid.landing;
    const plan = planForFaults(requestFor('osier', { wind: fresh }));
    const factor = plan.resolved.conditions.tasOverEas(0);
    const rounding = rapid.track.filter(({ phase }) => phase === 'round-out');
    const lowest = rounding.reduce((low, sample) => (sample.height < low.height ? sample : low));
    const energy = (factor ** 2 * (lowest.eas ** 2 - level!.eas ** 2)) / (2 * standardGravity);
    expect(balloon!.rise).toBeGreaterThan(0.5);
    expect(balloon!.rise).toBeLessThan(energy);
    expect(rapid.landing.pull).toBeCloseTo(1.4, 9);
  });
  it('of speed on final floats, and the float is the longer the faster', () => {
    const distances = [0, 4, 8, 12].map(
      (knots) => flownWith({ kind: 'final-speed', amount: { by: knots * kt } }).landing.holdOff!.distance,
    );
    for (let i = 1; i < distances.length; i++) expect(distances[i]).toBeGreaterThan(distances[i - 1]!);
  });
  it('of drift touches with the wind across the wheels as side speed', () => {
    const drifting = flownWith({ kind: 'touchdown-drift' });
    const across = 12 * kt * Math.sin(28 * deg) * (2 / 10) ** 0.143;
    expect('side' in drifting.landing && drifting.landing.side).toBeCloseTo(across, 3);
    expect(drifting.end.across).toBeGreaterThan(0);
  });
  it('of too much speed at the touch says that the bounce is not in the model', () => {
    const change: FaultChange = { kind: 'touchdown-speed', amount: { factor: 1.2 } };
    const fast = flownWith(change, windOffRunway(0, 0));
    expect(fast.landing).toMatchObject({ how: 'touched', beyond: 'bounce' });
    expect(fast.end.along).toBeLessThan(0);
    // The wind that drops below 50 ft has taken what of the approach speed this would need.
    const inWind = flyFault(planForFaults(requestFor('osier', { wind: fresh })), change);
    expect(inWind).toMatchObject({ flown: false, reason: 'no-speed-left' });
    const less = flownWith({ kind: 'touchdown-speed', amount: { factor: 1.1 } });
    expect(less.landing).toMatchObject({ how: 'touched', beyond: 'bounce' });
  });
});
