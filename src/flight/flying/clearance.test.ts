import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AircraftId,
  aircraftIds,
  requestFor,
  runwayHeading,
  windOffRunway,
} from '../../../tests/flight-school.ts';
import { type SaidCaution, saidCautions } from '../../../tests/said-cautions.ts';
import { planApproach } from '../plan/planner.ts';
import type { Obstacle } from '../terms/airfield.ts';
import type { Phase, Plan, PlanRequest, TrackSample } from '../terms/plan.ts';
import { closestPass, type Required, riseToClear, type Swept } from './clearance.ts';

const foot = 0.3048;
const fifty = 50 * foot;
const degrees = Math.PI / 180;
const { runway, aircraft: osier } = requestFor('osier');

/** Enough to ask of any obstacle how near it is, and never so much that one direction counts for more than another. */
const anyDistance: Required = { over: 1e6, near: 1e6, nearInLanding: 1e6 };
const usual: Required = { over: fifty, near: fifty, nearInLanding: osier.wing.span };

const asked = (changes: Partial<PlanRequest> = {}) => requestFor('osier', { detail: 'flight', ...changes });
const flown = (changes: Partial<PlanRequest> = {}) => planApproach(asked(changes));
const cautioned = (obstacle: Obstacle, changes: Partial<PlanRequest> = {}): SaidCaution | undefined =>
  saidCautions(flown({ ...changes, runway: { ...runway, obstacles: [obstacle] } })).find(
    ({ code }) => code === 'obstacle-clearance',
  );
const swept = ({ track, aircraft }: Plan): Swept => ({ track, wing: aircraft.wing, runwayHeading });

/** A straight, level flight along the landing direction, wings level unless banked. */
function passing(height: number, { bank = 0, phase = 'final' as Phase, drift = 0, to = 100 } = {}): Swept {
  const at = (time: number, along: number): TrackSample => {
    const [eas, tas, groundspeed, sink] = [20, 20, 20, 0];
    const heading = runwayHeading + drift;
    return { time, along, across: 0, height, heading, bank, eas, tas, sink, groundspeed, phase };
  };
  const track = [at(0, -100), at(5, (to - 100) / 2), at(10, to)];
  return { track, wing: osier.wing, runwayHeading };
}
const { span, aboveWheels } = osier.wing;
const mast = (changes: Partial<Obstacle> = {}): Obstacle => ({
  what: 'mast',
  height: 30,
  along: 0,
  across: 0,
  width: 2,
  ...changes,
});

describe('the distance in space of a straight flight', () => {
  it('is the height over the top where the wings pass over', () => {
    for (const across of [0, 5.9, -5.9]) {
      const pass = closestPass(mast({ across }), passing(40), usual)!;
      expect(pass.how).toBe('above');
      expect(pass.distance).toBeCloseTo(10, 6);
    }
  });
  it('is from the wing tip to the near side where it passes lower than the top', () => {
    const pass = closestPass(mast({ across: 16 }), passing(20), usual)!;
    expect(pass).toMatchObject({ how: 'beside', limit: fifty });
    expect(pass.distance).toBeCloseTo(10, 2);
    expect(closestPass(mast({ across: -16 }), passing(20), usual)!.distance).toBeCloseTo(10, 2);
  });
  it('is up and sideways together past the top', () => {
    const pass = closestPass(mast({ across: -10 }), passing(33), usual)!;
    expect(pass.how).toBe('beside');
    expect(pass.distance).toBeCloseTo(5, 2);
    expect(closestPass(mast({ across: 9 }), passing(34), usual)).toMatchObject({
      how: 'above',
      distance: expect.closeTo(5, 2),
    });
  });
  it('is how far below the top where the path meets it', () => {
    for (const across of [0, 5.9, -5.9]) {
      const pass = closestPass(mast({ across }), passing(22), usual)!;
      expect(pass.how).toBe('met');
      expect(pass.distance).toBeCloseTo(-8, 6);
    }
    expect(closestPass(mast(), passing(30), usual)).toMatchObject({ how: 'met', distance: 0 });
  });
  it('counts what lies ahead of the end, and behind the beginning', () => {
    expect(closestPass(mast({ along: 104 }), passing(20), usual)!.distance).toBeCloseTo(4, 2);
    expect(closestPass(mast({ along: -107 }), passing(20), usual)!.distance).toBeCloseTo(7, 2);
    expect(closestPass(mast({ along: 116 }), passing(20), usual)).toBeUndefined();
  });
  it('turns the wing with the heading: crabbing, a tip goes ahead', () => {
    const pass = closestPass(mast({ along: 104, across: -8 }), passing(20, { drift: 30 * degrees }), usual)!;
    // The left tip, 5 m from the middle, lies 30 degrees ahead of square: 2.5 m on and 4.33 m out, the mast 7 m out.
    expect(pass.distance).toBeCloseTo(Math.hypot(1.5, 7 - 4.3301), 2);
  });
  it('is never more banked than level, and by no more than the tip comes down and swings out', () => {
    for (const bank of [30 * degrees, -30 * degrees, 60 * degrees]) {
      const sin = Math.sin(Math.abs(bank));
      const dip = (span / 2) * sin - aboveWheels * Math.cos(bank);
      const over = closestPass(mast(), passing(40, { bank }), usual)!.distance;
      expect(over).toBeCloseTo(10 - Math.max(0, dip), 6);
      const beside = closestPass(mast({ across: 16 }), passing(20, { bank }), usual)!.distance;
      expect(beside).toBeCloseTo(10 - aboveWheels * sin, 2);
    }
  });
});

describe('what is required', () => {
  const needed = (required: Required, from: Swept, obstacle: Obstacle) =>
    closestPass(obstacle, from, required)?.limit;
  it('is 50 ft in every direction in the air', () => {
    expect(needed(usual, passing(30 + fifty - 0.01), mast())).toBe(fifty);
    expect(needed(usual, passing(30 + fifty + 0.01), mast())).toBeUndefined();
    const to = 6 + fifty;
    expect(needed(usual, passing(20), mast({ across: to - 0.01 }))).toBe(fifty);
    expect(needed(usual, passing(20), mast({ across: to + 0.01 }))).toBeUndefined();
  });
  it('is a wing span from the wing in the round-out and the hold-off', () => {
    for (const phase of ['round-out', 'hold-off'] as const) {
      expect(needed(usual, passing(1, { phase }), mast({ across: 6 + span - 0.01 }))).toBe(span);
      expect(needed(usual, passing(1, { phase }), mast({ across: 6 + span + 0.01 }))).toBeUndefined();
    }
  });
  it('is more over an obstacle where a school asks for it, and no more beside it', () => {
    const own: Required = { ...usual, over: 60 };
    expect(closestPass(mast({ across: 5.9 }), passing(85), own)).toMatchObject({ how: 'above', limit: 60 });
    expect(closestPass(mast({ across: 5.9 }), passing(85), own)!.distance).toBeCloseTo(55, 6);
    expect(closestPass(mast({ across: 6.1 }), passing(85), own)).toBeUndefined();
    expect(closestPass(mast({ across: 22 }), passing(20), own)).toBeUndefined();
    expect(closestPass(mast({ across: 21 }), passing(20), own)!.limit).toBe(fifty);
  });
});

type Point = readonly [along: number, across: number, height: number];

/** Which point of the aircraft, and when: from `out` -1, the left wing tip, to 1, the right one; `at` counts samples. */
interface Which {
  /** The wing as it is banked about the wheels, its middle above them; or half a span to each side of the wheels. */
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
  /** m: the least distance of any point tried of the aircraft from any tried of the obstacle, and on which leg. */
  readonly distance: number;
  readonly phase: Phase;
  /** m: the farthest below the top that a point went through the wall; undefined where none did. */
  readonly below: number | undefined;
}

/** Tries points all along the flight against points all over the obstacle, and then ever nearer ones about the best. */
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

/** A flight of any pattern, and where on it an obstacle stands: so near that the clearance is in question. */
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

describe('the clearance of any flight from any obstacle', { timeout: 600_000 }, () => {
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
            // The path of the last seconds is bent between two samples: the wind takes airspeed there.
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

describe('an obstacle across the leg flown', () => {
  const on = (phase: Phase, { track }: Plan) => {
    const leg = track.filter((sample) => sample.phase === phase);
    return leg[Math.floor(leg.length / 2)]!;
  };

  it.each(['left', 'right'] as const)(
    'is met as a mast of 900 ft on a %s base flown at 600 ft',
    (circuit) => {
      const from600 = { circuit, wind: windOffRunway(circuit === 'left' ? -28 : 28, 12) };
      const { along, across, height } = on('base', flown(from600));
      expect(Math.abs(height - 600 * foot)).toBeLessThan(60 * foot);
      const caution = cautioned(mast({ along, across, height: 900 * foot }), from600)!;
      expect(caution.grade).toBe('not-to-be-flown');
      // Over half a span and the width the path comes down by a few metres.
      expect(caution.value).toBeLessThanOrEqual(height - 900 * foot);
      expect(caution.value).toBeGreaterThan(height - 900 * foot - 3);
      expect(caution.message).toMatch(/^The path meets the mast, \d+ ft below the top\.$/);
      expect(['base-key', 'final-turn']).toContain(caution.at);
      expect(caution.remedy).toMatch(
        /^A path \d+ ft higher would clear the mast, [\d,]+ ft at the (base key|final turn)\.$/,
      );
    },
  );

  it.each(['left', 'right'] as const)('is met as a wall across a %s downwind', (circuit) => {
    const { along, across, height } = on('downwind', flown({ circuit }));
    const wall = { what: 'ridge', along, across: 1.2 * across, height: height + 10, width: 500 };
    expect(cautioned(wall, { circuit })).toMatchObject({
      grade: 'not-to-be-flown',
      at: expect.stringMatching(/^downwind-key$|^base-turn$/),
    });
    expect(cautioned(wall, { circuit })!.value).toBeCloseTo(-10, 3);
    expect(cautioned({ ...wall, across: -across }, { circuit })).toBeUndefined();
    expect(cautioned({ ...wall, height: height - 10 }, { circuit })!.value).toBeCloseTo(10, 0);
  });

  it('is seen from both turns, on their outer side and on their inner side', () => {
    const plan = flown();
    for (const phase of ['base-turn', 'final-turn'] as const) {
      const { along, across, height, heading } = on(phase, plan);
      for (const side of [-12, 12]) {
        const tree = mast({
          along: along - side * Math.sin(heading - runwayHeading),
          across: across + side * Math.cos(heading - runwayHeading),
          height: height + 5,
        });
        expect(cautioned(tree), `${phase} ${side}`).toMatchObject({ grade: 'beyond-good-practice' });
        expect(cautioned(tree)!.message).toMatch(
          /^The wing comes within \d+ ft of the mast, beside or before it; 50 ft is the least\.$/,
        );
      }
    }
  });
});

describe('an obstacle at the runway', () => {
  it('draws nothing 40 m beside the touchdown, nor beyond the runway', () => {
    for (const phase of [-30, 0, 40]) {
      for (const across of [-45, 45]) {
        const trees = { what: 'trees', height: 25, along: phase, across, width: 10 };
        expect(cautioned(trees)).toBeUndefined();
      }
    }
    const hedge = { what: 'hedge', height: 12 * foot, across: 0, width: 60 };
    expect(cautioned({ ...hedge, along: runway.length - runway.spot + 40 })).toBeUndefined();
  });

  it('beside the touchdown is too near within a wing span of the wing tip', () => {
    const trees = (gap: number) => ({
      what: 'trees',
      height: 25,
      along: -1,
      across: osier.wing.span / 2 + gap + 5,
      width: 10,
    });
    expect(cautioned(trees(osier.wing.span + 0.1))).toBeUndefined();
    expect(cautioned(trees(osier.wing.span - 0.1))).toMatchObject({
      limit: osier.wing.span,
      at: 'touchdown',
      source: expect.stringContaining('no source'),
    });
  });
});

describe('a hedge under final', () => {
  it('is passed at the height of the wheels over it, less what the path comes down beyond it', () => {
    const plan = flown();
    const i = plan.track.findIndex(({ phase, along }) => phase === 'final' && along > -300);
    const [before, after] = [plan.track[i - 1]!, plan.track[i]!];
    const share = (-300 - before.along) / (after.along - before.along);
    const wheels = before.height + share * (after.height - before.height);
    const slope = Math.atan2(before.height - after.height, after.along - before.along);
    const hedge = { what: 'hedge', height: wheels - 10, along: -300, across: 0, width: 60 };
    const caution = cautioned(hedge)!;
    expect(caution.value).toBeCloseTo(10 * Math.cos(slope), 2);
    expect(caution.message).toBe('The path passes 32 ft above the hedge; 50 ft is the least.');
    expect(caution.source).toContain('25.125');
    expect(cautioned({ ...hedge, height: wheels + 2 })!.value).toBeCloseTo(-2, 3);
    expect(cautioned({ ...hedge, height: wheels - fifty / Math.cos(slope) - 0.02 })).toBeUndefined();
    expect(cautioned({ ...hedge, height: wheels - fifty / Math.cos(slope) + 0.02 })).toBeDefined();
  });
});
