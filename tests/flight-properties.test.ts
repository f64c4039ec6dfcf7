import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planToJson } from '../src/export/plan-json.ts';
import { standardGravity } from '../src/flight/air/constants.ts';
import { sinOfGlide } from '../src/flight/aircraft/glide.ts';
import { approach180 } from '../src/flight/approaches/approach-180.ts';
import { flyPattern } from '../src/flight/flying/fly-pattern.ts';
import {
  ACROSS,
  ALONG,
  BANK,
  EAS,
  glidingTurn,
  HEADING,
  HEIGHT,
  type Medium,
  stateSize,
} from '../src/flight/flying/motions.ts';
import { Integrator } from '../src/flight/numerics/integrator.ts';
import { planApproach } from '../src/flight/plan/planner.ts';
import { resolveRequest } from '../src/flight/plan/request.ts';
import type { Plan, PlanRequest } from '../src/flight/terms/plan.ts';
import { radiansPerDegree } from '../src/units/factors.ts';
import { aircraftIds, requestFor, runwayHeading, windOffRunway } from './flight-school.ts';

const degrees = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const number = degrees;
/** As few runs as find something; the same ones each time, so that a failure can be repeated. */
const runs = (numRuns: number) => ({ numRuns, seed: 1903 });

/** Anything that an instructor may ask for in a half circuit, sensible or not. */
const asked = fc.record({
  id: fc.constantFrom(...aircraftIds),
  power: fc.constantFrom('idle' as const, 'stopped' as const),
  circuit: fc.constantFrom('left' as const, 'right' as const),
  windFrom: degrees(-180, 180),
  knots: number(0, 22),
  windProfile: fc.constantFrom('power' as const, 'uniform' as const),
  temperature: number(255, 315),
  height: number(90, 450),
  spacing: number(120, 1000),
  bank: degrees(15, 45),
});
type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never;

function requestOf({ id, windFrom, knots, bank, ...rest }: Asked): PlanRequest {
  return requestFor(id, { ...rest, wind: windOffRunway(windFrom, knots), bank: bank * radiansPerDegree });
}

/** Places of a flight as plain numbers, to compare two flights. */
const places = (plan: Plan, mirrored = 1) =>
  plan.track.map(({ time, along, across, height }) => [time, along, mirrored * across, height]);

function expectSame(ours: readonly number[][], theirs: readonly number[][], within: number): void {
  expect(ours).toHaveLength(theirs.length);
  const off = ours.map((row, i) => Math.max(...row.map((value, k) => Math.abs(value - theirs[i]![k]!))));
  expect(Math.max(...off)).toBeLessThan(within);
}

describe('every half circuit', () => {
  it('is the mirror image of the other hand in the mirrored wind', () => {
    fc.assert(
      fc.property(asked, (one) => {
        const plan = planApproach(requestOf(one));
        const circuit = one.circuit === 'left' ? 'right' : 'left';
        const mirrored = planApproach(requestOf({ ...one, circuit, windFrom: -one.windFrom }));
        expect(mirrored.made).toBe(plan.made);
        expectSame(places(plan), places(mirrored, -1), 1e-6);
      }),
      runs(40),
    );
  });

  it('is the same in the spot frame when runway and wind turn together', () => {
    fc.assert(
      fc.property(asked, degrees(0, 360), (one, turned) => {
        const request = requestOf(one);
        const turn = (angle: number) => (angle + turned * radiansPerDegree) % (2 * Math.PI);
        const elsewhere = planApproach({
          ...request,
          runway: { ...request.runway, heading: turn(request.runway.heading) },
          wind: { ...request.wind, from: turn(request.wind.from) },
        });
        expectSame(places(planApproach(request)), places(elsewhere), 1e-6);
      }),
      runs(40),
    );
  });

  it('never gains height, in any wind, with the engine idling or stopped', () => {
    fc.assert(
      fc.property(asked, (one) => {
        const { track } = planApproach(requestOf(one));
        for (let i = 1; i < track.length; i++) {
          expect(track[i]!.height).toBeLessThanOrEqual(track[i - 1]!.height);
        }
      }),
      runs(60),
    );
  });

  it('touches down within 0.1 m of the spot wherever it says so, with the wheels on the ground', () => {
    let made = 0;
    fc.assert(
      fc.property(asked, (one) => {
        const plan = planApproach(requestOf(one));
        if (!plan.made) return;
        made++;
        expect(Math.abs(plan.touchdown.along)).toBeLessThan(0.1);
        expect(Math.abs(plan.touchdown.across)).toBeLessThan(0.1);
        expect(plan.track.at(-1)!.height).toBeCloseTo(0, 6);
        expect(plan.track.at(-1)!.phase).toBe('hold-off');
      }),
      runs(60),
    );
    expect(made).toBeGreaterThan(20);
  });

  it('says that it is beyond reach exactly where it is not made', () => {
    fc.assert(
      fc.property(asked, (one) => {
        const plan = planApproach(requestOf(one));
        expect(plan.cautions.some(({ code }) => code === 'beyond-reach')).toBe(!plan.made);
      }),
      runs(40),
    );
  });

  it('has samples at most half a second apart, each later than the one before', () => {
    fc.assert(
      fc.property(asked, (one) => {
        const { track } = planApproach(requestOf(one));
        expect(track[0]!.time).toBe(0);
        for (let i = 1; i < track.length; i++) {
          const gap = track[i]!.time - track[i - 1]!.time;
          expect(gap).toBeGreaterThan(0);
          expect(gap).toBeLessThanOrEqual(0.5 + 1e-9);
        }
      }),
      runs(60),
    );
  });

  it('prints finite numbers only', () => {
    fc.assert(
      fc.property(asked, (one) => {
        expect(notPrintable(planToJson(planApproach(requestOf(one))))).toEqual([]);
      }),
      runs(60),
    );
  });
});

/** The paths of what JSON would turn into null or leave out. */
function notPrintable(value: unknown, path = ''): string[] {
  if (value === undefined || (typeof value === 'number' && !Number.isFinite(value))) return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notPrintable(inner, `${path}.${key}`));
}

describe('the step of the integrator', () => {
  it('does not show: half of it moves the touchdown by less than a centimetre (two in a steep turn)', () => {
    fc.assert(
      fc.property(asked, (one) => {
        const request = requestOf(one);
        const plan = planApproach(request);
        const { conditions, flown } = resolveRequest(request);
        if (!plan.made) return;
        const answer = approach180.solve(
          {
            side: plan.circuit === 'right' ? 1 : -1,
            height: flown.height,
            heightGiven: true,
            keyHeight: flown.height,
            spacing: flown.spacing,
            bank: flown.bank,
            bankGiven: true,
            options: {},
            pull: plan.roundOut.loadFactor,
            leastFinal: 91.44,
          },
          conditions,
        )!;
        expect(answer.solved.value).toBeCloseTo(plan.solved.value, 3);
        const end = (step: number) =>
          flyPattern(answer.closed.procedure, conditions, runwayHeading, step).flight.track.at(-1)!;
        const [whole, half] = [end(0.5), end(0.25)];
        const bank = Math.max(...plan.track.map((sample) => Math.abs(sample.bank)));
        const moved = Math.hypot(whole.along - half.along, whole.across - half.across);
        expect(moved).toBeLessThan(bank <= 45.001 * radiansPerDegree ? 0.01 : 0.02);
        expect(Math.abs(whole.time - half.time)).toBeLessThan(0.001);
      }),
      runs(40),
    );
  });
});

describe('more wind on final', () => {
  it('moves the base turn nearer', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...aircraftIds),
        number(250, 400),
        degrees(-30, 30),
        number(0, 12),
        number(1, 5),
        (id, height, from, knots, more) => {
          const plan = (speed: number) =>
            planApproach(requestFor(id, { height, wind: windOffRunway(from, speed) }));
          const [less, stronger] = [plan(knots), plan(knots + more)];
          if (!less.made || !stronger.made) return;
          compared++;
          expect(stronger.solved.value).toBeLessThan(less.solved.value);
        },
      ),
      runs(30),
    );
    expect(compared).toBeGreaterThan(20);
  });
});

describe('a turn in still air of one density', () => {
  const turn = fc.record({
    speed: number(15, 40),
    ratio: number(3, 12),
    factor: number(1, 1.2),
    bank: degrees(10, 50),
    rollRate: degrees(5, 60),
    side: fc.constantFrom(1 as const, -1 as const),
  });
  const mediumOf = (speed: number, ratio: number, factor: number): Medium => ({
    polar: { speed, ratio },
    thinning: () => 0,
    tasOverEas: () => factor,
    wind: (_height, out) => {
      out.along = 0;
      out.across = 0;
    },
  });
  const stateAt = (eas: number, bank: number) => {
    const state = new Float64Array(stateSize);
    state[EAS] = eas;
    state[BANK] = bank;
    state[HEIGHT] = 1000;
    return state;
  };

  it('is a circle of radius V^2 cos(g)/(g tan(bank)), and the height lost is sink times time', () => {
    fc.assert(
      fc.property(turn, ({ speed, ratio, factor, bank, side }) => {
        const medium = mediumOf(speed, ratio, factor);
        const angle = bank * radiansPerDegree;
        const tas = speed * factor;
        const sin = sinOfGlide(medium.polar, speed, Math.cos(angle));
        const radius = (tas ** 2 * Math.sqrt(1 - sin ** 2)) / (standardGravity * Math.tan(angle));
        const state = stateAt(speed, side * angle);
        const half = glidingTurn(medium, 0, (s) => Math.PI - side * s[HEADING]!);
        const { duration } = new Integrator(stateSize).run(half, state, false);
        expect(state[ACROSS]).toBeCloseTo(side * 2 * radius, 2);
        expect(state[ALONG]).toBeCloseTo(0, 2);
        expect(duration).toBeCloseTo((Math.PI * tas) / (standardGravity * Math.tan(angle)), 6);
        expect(1000 - state[HEIGHT]!).toBeCloseTo(tas * sin * duration, 6);
      }),
      runs(60),
    );
  });

  it('turns by -g ln(cos(bank))/(V p) while the bank goes on at a rate p', () => {
    fc.assert(
      fc.property(turn, ({ speed, ratio, factor, bank, rollRate, side }) => {
        const angle = bank * radiansPerDegree;
        const rate = rollRate * radiansPerDegree;
        const state = stateAt(speed, 0);
        const rollIn = glidingTurn(
          mediumOf(speed, ratio, factor),
          side * rate,
          (s) => angle - side * s[BANK]!,
        );
        const { duration } = new Integrator(stateSize, 0.02).run(rollIn, state, false);
        const heading = (-standardGravity * Math.log(Math.cos(angle))) / (speed * factor * rate);
        expect(duration).toBeCloseTo(angle / rate, 9);
        expect(side * state[HEADING]!).toBeCloseTo(heading, 7);
      }),
      runs(60),
    );
  });
});
