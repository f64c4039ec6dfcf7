import { describe, expect, it } from 'vitest';
import { type AircraftId, aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { saidCautions } from '../../../tests/said-cautions.ts';
import type { Plan, PlanRequest } from '../terms/plan.ts';
import { planApproach } from './planner.ts';

const foot = 0.3048;

/** The number that a `beyond-reach` caution suggests. */
function suggested(plan: Plan, pattern: RegExp): number | undefined {
  const message = saidCautions(plan).find(({ code }) => code === 'beyond-reach')?.message ?? '';
  const found = pattern.exec(message)?.[1];
  return found === undefined ? undefined : Number(found.replace(',', ''));
}
const height = (plan: Plan) => suggested(plan, /from ([\d,]+) ft at the start/);
const knots = (plan: Plan) => suggested(plan, /wind of ([\d,]+) kt/);

/**
 * The spot made, and to be flown, with the turn to final complete at 300 ft or higher: nobody is told to start from
 * where it is not so.
 */
function isSound(request: PlanRequest): boolean {
  const { made, grade, keys } = planApproach({ ...request, detail: 'flight' });
  return (
    made && grade !== 'not-to-be-flown' && keys.find(({ id }) => id === 'final')!.height >= 300 * foot - 0.01
  );
}

const heights = [220, 260, 300, 340, 380, 420];
const airs = [
  ['calm', 0, 0],
  ['12 kt ahead', 0, 12],
  ['6 kt across', 90, 6],
  ['12 kt from behind', 170, 12],
] as const;

/** An aircraft that can take any wind: what is suggested keeps the limits of the others. */
function anyWind(id: AircraftId): PlanRequest {
  const request = requestFor(id);
  const limits = { wind: 60, crosswind: 60, tailwind: 60 };
  return { ...request, aircraft: { ...request.aircraft, limits } };
}

describe.each(aircraftIds)('where %s does not reach the spot', (id) => {
  const found = new Map<string, { request: PlanRequest; plan: Plan }[]>();
  const beyondReach = (from: number, speed: number) => {
    const name = `${from} ${speed}`;
    const plans =
      found.get(name) ??
      heights
        .map((feet) => requestFor(id, { height: feet * foot, wind: windOffRunway(from, speed) }))
        .map((request) => ({ request, plan: planApproach(request) }))
        .filter(({ plan }) => !plan.made);
    found.set(name, plans);
    return plans;
  };

  it.each(airs)('a height is suggested, for 1,000 ft is enough: %s', (_words, from, speed) => {
    for (const { request, plan } of beyondReach(from, speed)) {
      expect(planApproach({ ...request, height: 1000 * foot, detail: 'flight' }).made).toBe(true);
      expect(height(plan), `from ${Math.round(request.height! / foot)} ft`).toBeGreaterThan(
        request.height! / foot,
      );
    }
  });

  it.each(airs)('the height suggested works, and 20 ft less does not: %s', (_words, from, speed) => {
    for (const { request, plan } of beyondReach(from, speed)) {
      const feet = height(plan);
      if (feet === undefined) continue;
      expect(isSound({ ...request, height: feet * foot }), `${feet} ft`).toBe(true);
      expect(isSound({ ...request, height: (feet - 20) * foot }), `${feet - 20} ft`).toBe(false);
    }
  });

  it('the wind suggested works, from the same direction', () => {
    let suggestions = 0;
    for (const from of [0, 60, -120]) {
      for (const feet of [1200, 1300, 1400]) {
        const wind = (speed: number): Partial<PlanRequest> => ({ wind: windOffRunway(from, speed) });
        const request: PlanRequest = { ...anyWind(id), height: feet * foot, ...wind(35) };
        const beyond = planApproach(request);
        const speed = knots(beyond);
        if (beyond.made || speed === undefined) continue;
        suggestions++;
        expect(speed).toBeLessThan(35);
        expect(isSound({ ...request, ...wind(speed) }), `${speed} kt from ${from}, ${feet} ft`).toBe(true);
      }
    }
    expect(suggestions).toBeGreaterThan(0);
  });

  it('no wind is suggested that the aircraft does not bear', () => {
    for (const from of [0, 60, -120]) {
      const request = requestFor(id, { height: 1300 * foot, wind: windOffRunway(from, 35) });
      const speed = knots(planApproach(request));
      if (speed === undefined) continue;
      expect(planApproach({ ...request, wind: windOffRunway(from, speed) }).grade).not.toBe(
        'not-to-be-flown',
      );
    }
  });
});

describe('the caution beyond-reach', () => {
  it('says by how much', () => {
    const plan = planApproach(requestFor('osier', { height: 220 * foot }));
    const { value, message } = saidCautions(plan).find(({ code }) => code === 'beyond-reach')!;
    expect(value).toBeCloseTo(Math.hypot(plan.touchdown.along, plan.touchdown.across), 9);
    expect(message).toContain(`at best the wheels touch ${Math.ceil(value / 10) * 10} m from it`);
  });
});
