import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../tests/flight-school.ts';
import { planApproach } from '../flight/plan/planner.ts';
import { planToJson } from './plan-json.ts';

describe('the plan as JSON', () => {
  const request = requestFor('osier', { wind: windOffRunway(0, 8), detail: 'flight' });
  const airfieldWith = (windVeer: number | undefined) =>
    planToJson(planApproach({ ...request, airfield: { ...request.airfield, windVeer } }));

  it('has the veer of the wind in degrees, and no key for it where there is none', () => {
    expect(airfieldWith((20 * Math.PI) / 180).airfield).toHaveProperty('windVeer', 20);
    expect(airfieldWith(undefined).airfield).not.toHaveProperty('windVeer');
    expect(airfieldWith(0).airfield).not.toHaveProperty('windVeer');
  });

  it('lists the wind as it was flown: from the right of the runway above', () => {
    const { wind } = airfieldWith((20 * Math.PI) / 180) as { wind: { height: number; from: number }[] };
    const from = (height: number) => wind.find((at) => at.height === height)!.from;
    // (150 - 10) / (304.8 - 10) of 20 degrees.
    expect(from(150) - from(2)).toBeCloseTo((140 / 294.8) * 20, 9);
  });
});
