import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading, windOffRunway } from '../../tests/flight-school.ts';
import type { Caution, CautionCode, Plan, PlanRequest } from './plan.ts';
import { planApproach } from './planner.ts';

const foot = 0.3048;
const knot = 1852 / 3600;
const degrees = Math.PI / 180;
const osier = requestFor('osier').aircraft;
const runway = requestFor('osier').runway;

const planned = (changes: Partial<PlanRequest> = {}) => planApproach(requestFor('osier', changes));
const caution = (plan: Plan, code: CautionCode): Caution | undefined =>
  plan.cautions.find((one) => one.code === code);

/** Holds a caution against what the plan itself shows, over requests that lie on both sides of the limit. */
function expectExactly(
  code: CautionCode,
  plans: readonly Plan[],
  figure: (plan: Plan) => number,
  over: (value: number) => boolean,
) {
  const seen = new Set<boolean>();
  for (const plan of plans) {
    const earned = over(figure(plan));
    seen.add(earned);
    const found = caution(plan, code);
    expect(found !== undefined, `${code} at ${figure(plan)}`).toBe(earned);
    if (found) expect(found.value).toBeCloseTo(figure(plan), 6);
  }
  expect([...seen].sort(), 'both sides of the limit').toEqual([false, true]);
}

const finalHeight = ({ keys }: Plan) => keys.find(({ id }) => id === 'final')!.height;

describe('each caution on both sides of its limit', () => {
  it('final-turn-low: the turn to final complete below 300 ft', () => {
    const plans = [450, 550, 600, 650, 700, 800, 1000, 1200].map((feet) => planned({ height: feet * foot }));
    expectExactly('final-turn-low', plans, finalHeight, (height) => height < 300 * foot);
    expect(caution(plans[0]!, 'final-turn-low')!.limit).toBeCloseTo(91.44, 9);
  });

  it('downwind-key-height: under 800 ft or over 1,200 ft', () => {
    const plans = [799, 800, 1000, 1200, 1201].map((feet) => planned({ height: feet * foot }));
    expect(plans.map((plan) => caution(plan, 'downwind-key-height')?.limit)).toEqual([
      800 * foot,
      undefined,
      undefined,
      undefined,
      1200 * foot,
    ]);
  });

  it('bank-over-medium: over 45 degrees', () => {
    const plans = [30, 44, 45, 46, 55].map((bank) => planned({ bank: bank * degrees }));
    const steepest = ({ track }: Plan) => Math.max(...track.map(({ bank }) => Math.abs(bank))) / degrees;
    expectExactly('bank-over-medium', plans, steepest, (bank) => bank > 45 + 1e-6);
  });

  it('stall-margin: under 1.3 times the stall speed at the bank flown', () => {
    const plans = [20, 30, 35, 40, 50].map((bank) => planned({ bank: bank * degrees }));
    const margin = (plan: Plan) =>
      plan.flown.glideSpeed / (plan.flown.stallSpeed * Math.sqrt(1 / Math.cos(plan.flown.bank)));
    expectExactly('stall-margin', plans, margin, (times) => times < 1.3);
  });

  it('wind-over-limit: the wind, or its gusts, over the limit of the aircraft', () => {
    const limit = osier.limits.wind / knot;
    const at = (knots: number, gust?: number) =>
      caution(
        planned({ wind: windOffRunway(0, knots), ...(gust && { gust: gust * knot }) }),
        'wind-over-limit',
      );
    expect(at(limit)).toBeUndefined();
    expect(at(limit + 0.1)!.value).toBeCloseTo((limit + 0.1) * knot, 9);
    expect(at(limit - 5, limit)).toBeUndefined();
    expect(at(limit - 5, limit + 0.1)!.limit).toBe(osier.limits.wind);
  });

  it('crosswind-over-limit: the part across the runway, from either side', () => {
    const limit = osier.limits.crosswind / knot;
    for (const side of [90, -90]) {
      const at = (knots: number) =>
        caution(planned({ wind: windOffRunway(side, knots) }), 'crosswind-over-limit');
      expect(at(limit - 0.01)).toBeUndefined();
      expect(at(limit + 0.01)).toBeDefined();
    }
    const slanting = caution(planned({ wind: windOffRunway(30, 2 * limit - 0.1) }), 'crosswind-over-limit');
    expect(slanting).toBeUndefined();
  });

  it('obstacle-clearance: the wheels less than 50 ft above it', () => {
    const wheelsOver = (along: number) => {
      const { track } = planned();
      const i = track.findIndex((sample) => sample.phase === 'final' && sample.along > along);
      const [before, after] = [track[i - 1]!, track[i]!];
      const share = (along - before.along) / (after.along - before.along);
      return before.height + share * (after.height - before.height);
    };
    const overHead = wheelsOver(-300);
    const with_ = (height: number, across = 0) => {
      const obstacle = { what: 'mast', height, along: -300, across, width: 2 };
      return caution(planned({ runway: { ...runway, obstacles: [obstacle] } }), 'obstacle-clearance');
    };
    expect(with_(overHead - 50 * foot - 0.01)).toBeUndefined();
    expect(with_(overHead - 50 * foot + 0.01)!.value).toBeCloseTo(50 * foot - 0.01, 3);
    expect(with_(overHead + 3)!.message).toContain('meets the mast');
    const reach = 1 + osier.wing.span / 2;
    expect(with_(overHead, reach + 0.1)).toBeUndefined();
    expect(with_(overHead, reach - 0.1)).toBeDefined();
  });

  it('off-runway: the spot beyond the end of the runway', () => {
    const at = (spot: number) => caution(planned({ runway: { ...runway, spot } }), 'off-runway');
    expect(at(runway.length - 1)).toBeUndefined();
    expect(at(runway.length + 1)!.value).toBeCloseTo(1, 1);
  });

  it('off-runway: short of it, on the centreline', () => {
    const low = { height: 380 * foot, wind: windOffRunway(0, 12) };
    const { touchdown } = planned(low);
    expect(touchdown.along).toBeLessThan(-5);
    expect(Math.abs(touchdown.across)).toBeLessThan(1);
    const at = (spot: number) => caution(planned({ ...low, runway: { ...runway, spot } }), 'off-runway');
    expect(at(-touchdown.along + 1)).toBeUndefined();
    expect(at(-touchdown.along - 2)!.value).toBeCloseTo(2, 6);
  });

  it('landing-distance: a roll longer than the runway left', () => {
    const at = (left: number) =>
      caution(planned({ runway: { ...runway, spot: runway.length - left } }), 'landing-distance');
    expect(at(osier.landingRoll + 1)).toBeUndefined();
    expect(at(osier.landingRoll - 1)!.value).toBe(osier.landingRoll);
  });

  it("round-out-pull: firmer than the aircraft's own", () => {
    const at = (loadFactor: number, height: number) =>
      planned({ aircraft: { ...osier, roundOut: { height, loadFactor } } });
    expect(caution(at(1.3, 5), 'round-out-pull')).toBeUndefined();
    const firm = at(1.03, 3);
    expect(caution(firm, 'round-out-pull')!.value).toBe(firm.roundOut.loadFactor);
    expect(firm.roundOut.loadFactor).toBeGreaterThan(1.03);
  });

  it('beyond-reach: the spot not made', () => {
    const plans = [250, 300, 400, 600, 1000].map((feet) => planned({ height: feet * foot }));
    for (const plan of plans) expect(caution(plan, 'beyond-reach') !== undefined).toBe(!plan.made);
    expect(plans.map(({ made }) => made)).toContain(false);
    expect(plans.map(({ made }) => made)).toContain(true);
  });

  it('wind-over-glide: a headwind that holds the aircraft still on final', () => {
    const at = (share: number) =>
      planned({
        windProfile: 'uniform',
        wind: { from: runwayHeading, speed: share * planned().flown.approachSpeed },
      });
    expect(caution(at(0.5), 'wind-over-glide')).toBeUndefined();
    const stuck = at(1.2);
    expect(stuck.made).toBe(false);
    expect(caution(stuck, 'wind-over-glide')).toBeDefined();
  });
});

describe('every caution', () => {
  it('says what it found, the limit and where the limit comes from', () => {
    const { cautions } = planned({ height: 300 * foot, wind: windOffRunway(90, 20), bank: 50 * degrees });
    expect(cautions.length).toBeGreaterThan(4);
    for (const { message, value, limit, source } of cautions) {
      expect(message).toMatch(/^[A-Z].*\.$/);
      expect(source).not.toBe('');
      expect(Number.isFinite(value) && Number.isFinite(limit)).toBe(true);
    }
  });

  it('changes no number of the flight', () => {
    const strict = { ...osier, limits: { wind: 1, crosswind: 1 } };
    const wind = windOffRunway(40, 8);
    const warned = planned({ aircraft: strict, wind });
    expect(warned.cautions.length).toBeGreaterThan(planned({ wind }).cautions.length);
    expect(warned.track).toEqual(planned({ wind }).track);
  });
});

describe("the school's own minimums", () => {
  const codes = (plan: Plan) => plan.cautions.map(({ code }) => code);
  const between = [650, 700, 750, 800, 850, 900, 1000]
    .map((feet) => feet * foot)
    .find((height) => {
      const final = finalHeight(planned({ height, wind: windOffRunway(0, 5) }));
      return final > 310 * foot && final < 390 * foot;
    })!;
  const asked = { height: between, wind: windOffRunway(0, 5) };

  it('of 400 ft make a turn to final low that 300 ft did not, and say whose they are', () => {
    expect(codes(planned(asked))).not.toContain('final-turn-low');
    const found = caution(planned({ ...asked, minimums: { finalTurn: 400 * foot } }), 'final-turn-low')!;
    expect(found.limit).toBeCloseTo(400 * foot, 9);
    expect(found.message).toContain('400 ft');
    expect(found.source).toContain('school');
  });

  it.each([200, 299.9, 300])('of %f ft change nothing: they never loosen a limit', (feet) => {
    for (const height of [450, 500, 600, 1000].map((start) => start * foot)) {
      const loose = planned({
        ...asked,
        height,
        minimums: { finalTurn: feet * foot, obstacleClearance: 10 * foot },
      });
      expect(loose.cautions).toEqual(planned({ ...asked, height }).cautions);
    }
  });

  it('of clearance over an obstacle tighten the 50 ft, and never loosen them', () => {
    const hedge = (height: number) => ({
      ...runway,
      obstacles: [{ what: 'hedge', height, along: -250, across: 0, width: 60 }],
    });
    const clear = planned({ runway: hedge(0), minimums: { obstacleClearance: 1000 * foot } });
    const over = caution(clear, 'obstacle-clearance')!.value;
    const sixty = hedge(over - 60 * foot);
    expect(codes(planned({ runway: sixty }))).not.toContain('obstacle-clearance');
    const tightened = planned({ runway: sixty, minimums: { obstacleClearance: 70 * foot } });
    expect(caution(tightened, 'obstacle-clearance')!.limit).toBeCloseTo(70 * foot, 9);
    expect(caution(tightened, 'obstacle-clearance')!.source).toContain('school');
    const forty = { runway: hedge(over - 40 * foot), minimums: { obstacleClearance: 30 * foot } };
    expect(caution(planned(forty), 'obstacle-clearance')!.limit).toBeCloseTo(50 * foot, 9);
  });

  it('change no number of the flight', () => {
    expect(planned({ ...asked, minimums: { finalTurn: 500 * foot } }).track).toEqual(planned(asked).track);
  });
});
