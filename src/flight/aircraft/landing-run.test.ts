import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading, windOffRunway } from '../../../tests/flight-school.ts';
import { resolveRequest } from '../plan/request.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { type LandingDay, landingRun, landingRunOf, runScale } from './landing-run.ts';

const knot = 1852 / 3600;
const { aircraft } = requestFor('osier');
const { reference } = aircraft.mass;

/** Sea level, standard, the reference mass: the conditions the roll is given for. */
const asGiven: Partial<PlanRequest> = {
  mass: reference,
  airfield: { ...requestFor('osier').airfield, elevation: 0 },
};

function dayOf(changes: Partial<PlanRequest>): LandingDay {
  const request = requestFor('osier', { ...asGiven, ...changes });
  const { conditions, flown } = resolveRequest(request);
  return { aircraft: conditions.aircraft, air: conditions.air, flown, runway: request.runway };
}
const rollIn = (changes: Partial<PlanRequest>) => landingRunOf(dayOf(changes));
const scaleIn = (changes: Partial<PlanRequest>) => rollIn(changes) / aircraft.landingRoll;
/** kt along the runway: a headwind, or a tailwind where negative. */
const along = (knots: number) => windOffRunway(knots < 0 ? 180 : 0, Math.abs(knots));

describe('the landing roll', () => {
  it('is as given on the day it is given for', () => {
    expect(rollIn({})).toBeCloseTo(aircraft.landingRoll, 9);
  });

  // FAA-H-8083-25, Aircraft Performance, landing: the effect of wind on landing distance.
  it('is 19 % shorter where the headwind counted on is 10 % of the touchdown speed, 21 % longer in such a tailwind', () => {
    const touchdown = aircraft.speeds.touchdown / knot;
    expect(scaleIn({ wind: along((0.1 * touchdown) / 0.5) })).toBeCloseTo(1 - 0.19, 9);
    expect(scaleIn({ wind: along((-0.1 * touchdown) / 1.5) })).toBeCloseTo(1.21, 9);
    expect(runScale(0.9, 1)).toBeCloseTo(0.81, 12);
  });

  // Regulation (EU) 965/2012, CAT.POL.A.330(c)(2).
  it('counts on no more than half of a headwind and on no less than one and a half times a tailwind', () => {
    const run = (tas: number) =>
      landingRun({ aircraft, tas, wind: { from: 0, speed: 0 }, heading: runwayHeading });
    const { touchdown } = aircraft.speeds;
    expect(rollIn({ wind: along(12) })).toBeCloseTo(run(touchdown - 6 * knot), 9);
    expect(rollIn({ wind: along(-8) })).toBeCloseTo(run(touchdown + 12 * knot), 9);
  });

  // FAA-H-8083-25, Aircraft Performance, landing (from memory): 10 % more mass, 5 % more speed, 10 % more distance.
  it('goes with the mass in proportion', () => {
    expect(scaleIn({ mass: 1.1 * reference })).toBeCloseTo(1.1, 9);
    expect(scaleIn({ mass: 0.8 * reference })).toBeCloseTo(0.8, 9);
  });

  // FAA-H-8083-25, Aircraft Performance, landing (from memory): 16 % more at 5,000 ft, about 3.5 % for each 1,000 ft.
  it('is 16 % longer at 5,000 ft of standard air, and longer in heat', () => {
    const high = { ...requestFor('osier').airfield, elevation: 5000 * 0.3048 };
    expect(scaleIn({ airfield: high })).toBeCloseTo(1.16, 2);
    expect(scaleIn({ temperature: 313.15 })).toBeCloseTo(313.15 / 288.15, 6);
    expect(scaleIn({ temperature: 277.15 })).toBeCloseTo(277.15 / 288.15, 6);
  });

  it('takes no notice of gusts ahead and full notice of gusts from behind', () => {
    expect(rollIn({ wind: along(10), gust: 18 * knot })).toBe(rollIn({ wind: along(10) }));
    expect(rollIn({ wind: along(-4), gust: 9 * knot })).toBeCloseTo(rollIn({ wind: along(-9) }), 9);
  });

  it('takes no notice of the wind across', () => {
    expect(rollIn({ wind: windOffRunway(90, 15) })).toBeCloseTo(aircraft.landingRoll, 9);
  });

  it('is longer by the square where the wheels touch faster', () => {
    const day = dayOf({});
    expect(landingRunOf(day, 1.1 * day.flown.touchdownSpeed)).toBeCloseTo(1.21 * landingRunOf(day), 9);
  });

  it('is nothing where the headwind counted on is all of the speed, and never less', () => {
    const { touchdown } = aircraft.speeds;
    const wind = { from: runwayHeading, speed: 2.5 * touchdown };
    expect(landingRun({ aircraft, tas: touchdown, wind, heading: runwayHeading })).toBe(0);
  });
});
