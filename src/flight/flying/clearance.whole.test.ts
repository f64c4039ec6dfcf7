import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AircraftId,
  aircraftIds,
  requestFor,
  runwayHeading,
  windOffRunway,
} from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import type { Obstacle } from '../terms/airfield.ts';
import type { Phase, Plan, PlanRequest, TrackSample } from '../terms/plan.ts';
import { closestPass, type Required, riseToClear, type Swept } from './clearance.ts';

// The clearance compared with a search of the whole aircraft along the whole path, which takes long.

const fifty = 50 * 0.3048;
const degrees = Math.PI / 180;

/** Enough to ask of any obstacle how near it is, and never so much that one direction counts for more than another. */
const anyDistance: Required = { over: 1e6, near: 1e6, nearInLanding: 1e6 };
const usual: Required = { over: fifty, near: fifty, nearInLanding: requestFor('osier').aircraft.wing.span };

const swept = ({ track, aircraft }: Plan): Swept => ({ track, wing: aircraft.wing, runwayHeading });

type Point = readonly [along: number, across: number, height: number];

/** Which point of the aircraft, and when: `out` from -1, the left wing tip, to 1, the right one; `at` counts samples. */
interface Which {
  /** The wing as it is banked about the wheels, with its middle above them; or half a span to each side of the wheels. */
  readonly kind: 'wing' | 'level';
  readonly out: number;
  readonly at: number;
}

function pointOf({ kind, out, at }: Which, { track, wing, runwayHeading: landing }: Swept): Point {
  const i = Math.min(track.length - 2, Math.floor(at));
  const [a, b] = [track[i]!, track[i + 1]!];
  const mix = (from: number, to: number) => from + (at - i) * (to - from);
  const turned = Math.atan2(Math.sin(b.heading - a.heading), Math.cos(b.heading - a.heading));
  const heading = a.heading + (at - i) * turned - landing;
  const bank = kind === 'level' ? 0 : mix(a.bank, b.bank);
  const up = kind === 'level' ? 0 : wing.aboveWheels;
  const toSide = (out * wing.span) / 2;
  const right = toSide * Math.cos(bank) + up * Math.sin(bank);
  return [
    mix(a.along, b.along) - right * Math.sin(heading),
    mix(a.across, b.across) + right * Math.cos(heading),
    mix(a.height, b.height) + up * Math.cos(bank) - toSide * Math.sin(bank),
  ];
}

/** From one number to another in equal steps no longer than asked. */
function grid(from: number, to: number, longest: number): number[] {
  const count = Math.max(1, Math.ceil((to - from) / longest));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}

interface Found {
  /** m: the least distance between any tried point of the aircraft and any of the obstacle, and on which leg. */
  readonly distance: number;
  readonly phase: Phase;
  /** m: the farthest below the top that a point went through the wall; undefined where none did. */
  readonly below: number | undefined;
}

/**
 * Tries points all along the flight against points all over the obstacle, and then nearer and nearer ones about the
 * best.
 */
function bruteForce({ along, across, height, width }: Obstacle, flight: Swept): Found {
  const { track } = flight;
  const [left, right] = [across - width / 2, across + width / 2];
  const [sides, heights] = [grid(left, right, 4), grid(0, height, 4)];
  let best = { distance: Number.POSITIVE_INFINITY, kind: 'wing' as Which['kind'], out: 0, at: 0, y: 0, z: 0 };
  let below: number | undefined;
  const look = (which: Which, [px, py, pz]: Point, y: number, z: number) => {
    const distance = Math.hypot(px - along, py - y, pz - z);
    if (distance < best.distance) best = { ...which, distance, y, z };
  };
  for (const kind of ['wing', 'level'] as const) {
    for (const out of [-1, -0.5, 0, 0.5, 1]) {
      let last: Point | undefined;
      for (const at of grid(0, track.length - 1, 0.125)) {
        const point = pointOf({ kind, out, at }, flight);
        if (last && (last[0] - along) * (point[0] - along) < 0) {
          const share = (along - last[0]) / (point[0] - last[0]);
          const y = last[1] + share * (point[1] - last[1]);
          const under = height - last[2] - share * (point[2] - last[2]);
          if (y >= left && y <= right && under > (below ?? 0)) below = under;
        }
        last = point;
        // Farther off along one axis alone than the best is in all.
        const off = [Math.abs(point[0] - along), left - point[1], point[1] - right, point[2] - height];
        if (Math.max(...off) > best.distance) continue;
        for (const y of sides) for (const z of heights) look({ kind, out, at }, point, y, z);
      }
    }
  }
  const inside = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  let seed = 1;
  const about = (value: number, width: number) => {
    seed = (seed * 48271) % 2147483647;
    return value + width * ((2 * seed) / 2147483647 - 1);
  };
  for (let scale = 1; scale > 1e-3; scale *= 0.9) {
    for (let tries = 0; tries < 150; tries++) {
      const which = {
        kind: best.kind,
        out: inside(about(best.out, 0.5 * scale), -1, 1),
        at: inside(about(best.at, 0.5 * scale), 0, track.length - 1),
      };
      const y = inside(about(best.y, 4 * scale), left, right);
      look(which, pointOf(which, flight), y, inside(about(best.z, 4 * scale), 0, height));
    }
  }
  return { distance: best.distance, phase: track[Math.ceil(best.at)]!.phase, below };
}

/** Evenly, to a thousandth of the range. */
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1000 }).map((share) => min + ((max - min) * share) / 1000);

/** A flight of any pattern, and where along it an obstacle stands: near enough for the clearance to be in question. */
const flights = fc.record({
  id: fc.constantFrom(...aircraftIds),
  approach: fc.oneof(
    { weight: 12, arbitrary: fc.constantFrom('180' as const, '90' as const) },
    { weight: 1, arbitrary: fc.constant('360' as const) },
  ),
  power: fc.constantFrom('idle' as const, 'stopped' as const),
  circuit: fc.constantFrom('left' as const, 'right' as const),
  off: between(-180, 180),
  knots: between(0, 16),
  bank: between(15 * degrees, 60 * degrees),
  spacing: between(250, 900),
});
const places = fc.record({
  share: between(0, 1),
  along: between(-40, 40),
  across: fc.oneof(between(-40, 40), between(-5, 5)),
  up: fc.oneof(between(-40, 20), between(-30, -8)),
  width: fc.oneof(between(0.1, 5), between(0.1, 60)),
});

type Place = Parameters<Parameters<typeof places.map>[0]>[0];

interface Choice extends Partial<PlanRequest> {
  readonly id: AircraftId;
  readonly off: number;
  readonly knots: number;
}

function requestOf({ id, off, knots, ...rest }: Choice): PlanRequest {
  return requestFor(id, { ...rest, wind: windOffRunway(off, knots), detail: 'flight' });
}

function made(choice: Choice): Plan {
  const plan = planApproach(requestOf(choice));
  fc.pre(plan.made);
  return plan;
}

function standing({ share, along, across, up, width }: Place, track: readonly TrackSample[]): Obstacle {
  const at = track[Math.round(share * (track.length - 1))]!;
  return {
    what: 'tower',
    height: Math.min(1000, Math.max(0.5, at.height + up)),
    along: at.along + along,
    across: at.across + across,
    width,
  };
}

/** m: by how much the strip may come nearer than the aircraft itself, with the banks and turns of this flight. */
function allowanceOf({ track, wing }: Swept): number {
  const steepest = Math.max(...track.map(({ bank }) => Math.abs(bank)));
  const half = wing.span / 2 + wing.aboveWheels;
  const turned = Math.max(
    ...track.slice(1).map(({ heading }, i) => Math.abs(Math.sin(heading - track[i]!.heading))),
  );
  return half * (1 - Math.cos(steepest)) + 2 * half * Math.sin(steepest) + half * turned;
}

describe('the clearance of any flight from any obstacle', () => {
  it('is never more than a brute-force distance, in space, from anything of the aircraft', () => {
    const seen = { met: 0, above: 0, beside: 0 };
    fc.assert(
      fc.property(flights, places, (flight, place) => {
        const from = swept(made(flight));
        const obstacle = standing(place, from.track);
        const found = bruteForce(obstacle, from);
        const pass = closestPass(obstacle, from, anyDistance)!;
        seen[pass.how]++;
        expect(pass.distance).toBeLessThanOrEqual(found.distance + 1e-6);
        if (found.below !== undefined) expect(pass.distance).toBeLessThanOrEqual(-found.below + 0.02);
        expect(found.distance - Math.max(0, pass.distance)).toBeLessThan(allowanceOf(from) + 0.02);
      }),
      { numRuns: 120, seed: 1912, endOnFailure: true },
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(5);
  });

  it('is that distance on a straight leg, but for what its heading changes', () => {
    let beside = 0;
    fc.assert(
      fc.property(flights, places, (flight, place) => {
        const plan = made(flight);
        const track = plan.track.filter(({ phase }) => ['final', 'round-out', 'hold-off'].includes(phase));
        fc.pre(track.length > 5);
        const from = { ...swept(plan), track };
        const obstacle = standing(place, track);
        const found = bruteForce(obstacle, from);
        const pass = closestPass(obstacle, from, anyDistance)!;
        if (pass.how === 'beside') beside++;
        if (found.below !== undefined) expect(pass.distance).toBeCloseTo(-found.below, 1);
        else
          expect(Math.abs(Math.max(0, pass.distance) - found.distance)).toBeLessThan(
            // The path of the last seconds bends between two samples: there the wind takes airspeed.
            allowanceOf(from) + 0.02,
          );
      }),
      { numRuns: 100, seed: 1912, endOnFailure: true },
    );
    expect(beside).toBeGreaterThan(20);
  });

  it('draws a caution wherever something of the aircraft is too near, and where it may be, and nowhere else', () => {
    const seen = { drawn: 0, none: 0 };
    fc.assert(
      fc.property(flights, places, (flight, place) => {
        const request = requestOf(flight);
        const from = swept(made(flight));
        const obstacle = standing(place, from.track);
        const { cautions } = planApproach({
          ...request,
          runway: { ...request.runway, obstacles: [obstacle] },
        });
        const caution = cautions.find(({ code }) => code === 'obstacle-clearance');
        const found = bruteForce(obstacle, from);
        const inLanding = found.phase === 'round-out' || found.phase === 'hold-off';
        const least = inLanding ? Math.min(fifty, from.wing.span) : fifty;
        seen[caution ? 'drawn' : 'none']++;
        if (found.distance < least) expect(caution).toBeDefined();
        if (found.distance > fifty + allowanceOf(from)) expect(caution).toBeUndefined();
        if ((found.below ?? 0) > 0.001) expect(caution!.grade).toBe('not-to-be-flown');
        if (caution && caution.value > 0) expect(caution.grade).toBe('beyond-good-practice');
      }),
      { numRuns: 100, seed: 1913, endOnFailure: true },
    );
    expect(Math.min(seen.drawn, seen.none)).toBeGreaterThan(20);
  });

  it('is the same of the mirrored pattern, on both sides of the runway', () => {
    fc.assert(
      fc.property(flights, places, (flight, place) => {
        const one = swept(made(flight));
        const circuit = flight.circuit === 'left' ? 'right' : 'left';
        const other = swept(planApproach(requestOf({ ...flight, circuit, off: -flight.off })));
        const obstacle = standing(place, one.track);
        const seen = closestPass(obstacle, one, anyDistance)!;
        const mirrored = closestPass({ ...obstacle, across: -obstacle.across }, other, anyDistance)!;
        expect(mirrored.distance).toBeCloseTo(seen.distance, 3);
        expect(mirrored.at.across).toBeCloseTo(-seen.at.across, 1);
      }),
      { numRuns: 40, seed: 1914, endOnFailure: true },
    );
  });

  it('is what is required once the whole path is raised by the rise that clears', () => {
    let met = 0;
    fc.assert(
      fc.property(flights, places, between(fifty, 60), (flight, place, over) => {
        const from = swept(made(flight));
        const obstacle = standing(place, from.track);
        const required = { ...usual, over };
        const pass = closestPass(obstacle, from, required);
        fc.pre(pass !== undefined);
        const rise = riseToClear(obstacle, from, required);
        expect(rise).toBeGreaterThanOrEqual(pass!.limit - pass!.distance - 30);
        const raised = (by: number) => ({
          ...from,
          track: from.track.map((sample) => ({ ...sample, height: sample.height + by })),
        });
        expect(closestPass(obstacle, raised(rise + 1e-6), required)).toBeUndefined();
        if (pass!.how === 'met') {
          met++;
          expect(closestPass(obstacle, raised(-pass!.distance - 0.01), required)!.distance).toBeLessThan(0.1);
        }
      }),
      { numRuns: 60, seed: 1915, endOnFailure: true },
    );
    expect(met).toBeGreaterThan(10);
  });
});
