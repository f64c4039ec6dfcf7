import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading, windOffRunway } from '../../../tests/flight-school.ts';
import { type SaidCaution, saidCautions } from '../../../tests/said-cautions.ts';
import { landingRunOf } from '../aircraft/landing-run.ts';
import type { AircraftData } from '../terms/aircraft-data.ts';
import type { CautionCode } from '../terms/caution.ts';
import type { Plan, PlanRequest } from '../terms/plan.ts';
import { planApproach } from './planner.ts';

const foot = 0.3048;
const knot = 1852 / 3600;
const degrees = Math.PI / 180;
const osier = requestFor('osier').aircraft;
const runway = requestFor('osier').runway;

const planned = (changes: Partial<PlanRequest> = {}) => planApproach(requestFor('osier', changes));
/** The same without the parts that take many flights. */
const flown = (changes: Partial<PlanRequest> = {}) => planned({ ...changes, detail: 'flight' });
/** Osier 15 with other figures. */
const withData = (changes: Partial<AircraftData>) => ({ aircraft: { ...osier, ...changes } });
const caution = (plan: Plan, code: CautionCode): SaidCaution | undefined =>
  saidCautions(plan).find((one) => one.code === code);

/** Compares a caution with what the plan itself shows, over requests on both sides of the limit. */
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

  it('final-turn-low: not to be flown where it is under the least by more than a third of it', () => {
    const grades = [650, 700, 750, 800, 850, 900, 1000, 1100].map((feet) => {
      const plan = flown({ height: feet * foot });
      const found = caution(plan, 'final-turn-low');
      const height = finalHeight(plan);
      const grade =
        height < 200 * foot ? 'not-to-be-flown' : height < 300 * foot ? 'beyond-good-practice' : undefined;
      expect(found?.grade).toBe(grade);
      return grade;
    });
    expect(new Set(grades).size).toBe(3);
    const strict = flown({
      height: 700 * foot,
      minimums: { finalTurn: 1.51 * finalHeight(flown({ height: 700 * foot })) },
    });
    expect(caution(strict, 'final-turn-low')!.grade).toBe('not-to-be-flown');
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

  it('stall-margin: not to be flown under 1.1, and never rounded up', () => {
    const at = (times: number) => {
      const speed = times * Math.sqrt(1 / Math.cos(40 * degrees)) * 29 * knot;
      const data = withData({ glide: { idle: { speed, ratio: 6.4 } } });
      return caution(flown({ ...data, bank: 40 * degrees }), 'stall-margin');
    };
    expect(at(1.301)).toBeUndefined();
    expect(at(1.101)).toMatchObject({ grade: 'beyond-good-practice', at: 'base-turn' });
    expect(at(1.099)!.grade).toBe('not-to-be-flown');
    expect(at(1.199)!.message).toContain(' 1.19 times ');
    expect(at(0.986)!.message).toContain(' 0.98 times ');
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

  it('obstacle-clearance: less than 50 ft from it in space', () => {
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
    // A glide of 6:1 comes 1 or 2 per cent nearer than straight down.
    expect(with_(overHead - 51.5 * foot)).toBeUndefined();
    const near = with_(overHead - 50 * foot)!;
    expect(near).toMatchObject({ grade: 'beyond-good-practice' });
    expect(near.value / foot).toBeGreaterThan(48.5);
    expect(near.value / foot).toBeLessThan(50);
    expect(with_(overHead + 3)).toMatchObject({
      grade: 'not-to-be-flown',
      message: expect.stringContaining('meets the mast'),
    });
    const reach = 1 + osier.wing.span / 2;
    expect(with_(overHead, reach + 51 * foot)).toBeUndefined();
    expect(with_(overHead, reach - 0.1)).toBeDefined();
  });

  it('off-runway: the spot beyond the end of the runway', () => {
    const at = (spot: number) => caution(planned({ runway: { ...runway, spot } }), 'off-runway');
    expect(at(runway.length - 1)).toBeUndefined();
    expect(at(runway.length + 1)!.value).toBeCloseTo(1, 1);
  });

  it('off-runway: short of it, on the centreline', () => {
    const low = { height: 400 * foot, wind: windOffRunway(0, 12) };
    const { touchdown } = planned(low);
    expect(touchdown.along).toBeLessThan(-5);
    expect(Math.abs(touchdown.across)).toBeLessThan(1);
    const at = (spot: number) => caution(planned({ ...low, runway: { ...runway, spot } }), 'off-runway');
    expect(at(-touchdown.along + 1)).toBeUndefined();
    expect(at(-touchdown.along - 2)!.value).toBeCloseTo(2, 6);
  });

  it('landing-distance: a roll in this wind and air that is longer than the runway left', () => {
    for (const wind of [windOffRunway(0, 12), windOffRunway(180, 4)]) {
      const roll = landingRunOf(flown({ wind }));
      const at = (left: number) =>
        caution(flown({ wind, runway: { ...runway, spot: runway.length - left } }), 'landing-distance');
      expect(at(roll + 1)).toBeUndefined();
      const found = at(roll - 1)!;
      expect(found.value).toBeCloseTo(roll, 3);
      expect(found).toMatchObject({ grade: 'not-to-be-flown', at: 'touchdown' });
    }
  });

  it('landing-distance: what is left is that after the spot, to the metre', () => {
    const found = caution(flown({ runway: { ...runway, spot: runway.length - 60 } }), 'landing-distance')!;
    expect(found.limit).toBe(60);
    expect(found.message).toContain('longer than the 60 m of runway left');
  });

  it('landing-distance: what fits in a calm does not in a tailwind, in heat or with more mass', () => {
    const left = landingRunOf(flown()) + 1;
    const tight = { runway: { ...runway, spot: runway.length - left } };
    const codes = (changes: Partial<PlanRequest>) =>
      flown({ ...tight, ...changes }).cautions.map(({ code }) => code);
    expect(codes({})).not.toContain('landing-distance');
    expect(codes({ wind: windOffRunway(0, 10) })).not.toContain('landing-distance');
    expect(codes({ wind: windOffRunway(180, 2) })).toContain('landing-distance');
    expect(codes({ temperature: 313.15 })).toContain('landing-distance');
    expect(codes({ mass: 1.05 * osier.mass.flown })).toContain('landing-distance');
  });

  it("round-out-pull: firmer than the aircraft's own", () => {
    const at = (loadFactor: number, height: number) =>
      planned(withData({ roundOut: { height, loadFactor } }));
    expect(caution(at(1.3, 5), 'round-out-pull')).toBeUndefined();
    const firm = at(1.03, 3);
    expect(caution(firm, 'round-out-pull')!.value).toBe(firm.roundOut.loadFactor);
    expect(caution(firm, 'round-out-pull')!.grade).toBe('worth-knowing');
    expect(firm.roundOut.loadFactor).toBeGreaterThan(1.03);
  });

  it('round-out-pull: more than the wing bears at the speed of the round-out is not to be flown', () => {
    const at = (height: number) => {
      const speeds = { stall: 29 * knot, touchdown: 29 * knot, approach: 39 * knot };
      return flown(withData({ speeds, roundOut: { height, loadFactor: 1.2 } }));
    };
    const borne = ({ track, flown: { stallSpeed } }: Plan) =>
      Math.min(...track.filter(({ phase }) => phase === 'round-out').map(({ eas }) => eas / stallSpeed)) ** 2;
    const plans = [0.8, 0.95, 1.1, 1.3, 2].map(at);
    const stalls = plans.map((plan) => plan.roundOut.loadFactor > borne(plan));
    expect([...new Set(stalls)].sort()).toEqual([false, true]);
    plans.forEach((plan, i) => {
      const found = caution(plan, 'round-out-pull')!;
      expect(found.grade === 'not-to-be-flown', found.message).toBe(stalls[i]);
      if (stalls[i]) expect(found.limit).toBeCloseTo(borne(plan), 9);
    });
    expect(caution(plans[0]!, 'round-out-pull')!.message).toMatch(
      /pull of 1\.9\d g, .* bears 1\.6\d g: it stalls\.$/,
    );
  });

  it('slow: straight flight under 1.3 times the stall speed, not to be flown under 1.1', () => {
    const at = (times: number) => {
      const speed = times * 29 * knot;
      return caution(flown(withData({ glide: { idle: { speed, ratio: 6.4 } } })), 'slow');
    };
    expect(at(1.3)).toBeUndefined();
    expect(at(1.301)).toBeUndefined();
    expect(at(1.299)).toMatchObject({ grade: 'beyond-good-practice', at: 'downwind-key' });
    expect(at(1.299)!.value).toBeCloseTo(1.299, 6);
    expect(at(1.101)!.grade).toBe('beyond-good-practice');
    expect(at(1.099)!.grade).toBe('not-to-be-flown');
  });

  it('slow: on final as well, but not in the round-out and the hold-off', () => {
    const at = (times: number) =>
      caution(flown(withData({ speeds: { ...osier.speeds, approach: times * 29 * knot } })), 'slow');
    expect(at(1.31)).toBeUndefined();
    expect(at(1.28)).toMatchObject({ at: 'final' });
  });

  it('approach-speed-not-reached: by more than half a knot, before the round-out', () => {
    const plans = [50, 60, 80, 100, 140, 180].map((height) =>
      flown({
        approach: '90',
        height: 1.6 * height,
        ...withData({
          glide: { idle: { speed: 52 * knot, ratio: 6.4 } },
          speeds: { ...osier.speeds, approach: 38 * knot },
        }),
      }),
    );
    const reached = ({ track, flown: { approachSpeed } }: Plan) =>
      Math.min(
        ...track.filter(({ phase }) => phase === 'final').map(({ eas }) => Math.abs(eas - approachSpeed)),
      );
    const seen = plans.map((plan) => {
      const found = caution(plan, 'approach-speed-not-reached');
      expect(found !== undefined, plan.touchdown.along.toFixed(0)).toBe(reached(plan) > 0.5 * knot);
      if (found) expect(Math.abs(found.value - found.limit)).toBeCloseTo(reached(plan), 9);
      return found !== undefined;
    });
    expect(seen).toContain(true);
    expect(seen).toContain(false);
  });

  it('bank-over-limit: a circle steeper than the aircraft may be banked', () => {
    const request: Partial<PlanRequest> = { approach: 'spiral', height: 1300 * foot };
    const plans = [12, 14, 16, 17].map((knots) => flown({ ...request, wind: windOffRunway(90, knots) }));
    const steepest = ({ track }: Plan) => Math.max(...track.map(({ bank }) => Math.abs(bank))) / degrees;
    const limit = osier.turns.limit / degrees;
    expectExactly('bank-over-limit', plans, steepest, (bank) => bank > limit + 1e-6);
    const over = caution(plans.at(-1)!, 'bank-over-limit')!;
    expect(over).toMatchObject({ grade: 'not-to-be-flown', at: 'overhead' });
    expect(over.limit).toBeCloseTo(60, 9);
    expect(caution(plans.at(-1)!, 'bank-over-medium')).toBeUndefined();
  });

  it('mass: more than the most, or less than the least, of the data that give them', () => {
    const data = withData({ mass: { ...osier.mass, most: 400, least: 300 } });
    const at = (mass: number) => caution(flown({ ...data, mass }), 'mass');
    expect(at(400)).toBeUndefined();
    expect(at(300)).toBeUndefined();
    expect(at(401)).toMatchObject({ grade: 'not-to-be-flown', value: 401, limit: 400 });
    expect(at(299)).toMatchObject({ grade: 'not-to-be-flown', value: 299, limit: 300 });
  });

  it('tailwind: over 5 kt where neither the aircraft nor the school says otherwise, gusts counted', () => {
    const at = (knots: number, gust?: number) =>
      caution(flown({ wind: windOffRunway(180, knots), gust: gust && gust * knot }), 'tailwind');
    expect(at(4.99)).toBeUndefined();
    expect(at(5.01)).toMatchObject({
      grade: 'beyond-good-practice',
      source: expect.stringContaining('Doc 8168'),
    });
    expect(at(10)!.value).toBeCloseTo(10 * knot, 9);
    expect(at(4, 5)).toBeUndefined();
    expect(at(4, 7)!.message).toBe('The tailwind in gusts on the runway is 7 kt; the most is 5 kt.');
    const aslant = (off: number) => caution(flown({ wind: windOffRunway(off, 8) }), 'tailwind');
    expect(aslant(180 - 52)).toBeUndefined();
    expect(aslant(180 - 50)).toBeDefined();
  });

  it("tailwind: the aircraft's own limit is not to be passed, and may be more than the usual one", () => {
    const at = (knots: number, tailwind: number, school?: number) =>
      caution(
        flown({
          wind: windOffRunway(180, knots),
          ...withData({ limits: { ...osier.limits, tailwind: tailwind * knot } }),
          minimums: { mostTailwind: school && school * knot },
        }),
        'tailwind',
      );
    expect(at(3.9, 4)).toBeUndefined();
    expect(at(4.1, 4)).toMatchObject({
      grade: 'not-to-be-flown',
      source: expect.stringContaining('aircraft data'),
    });
    expect(at(6, 8)).toBeUndefined();
    expect(at(8.1, 8)!.grade).toBe('not-to-be-flown');
    expect(at(6, 8, 5)).toMatchObject({
      grade: 'beyond-good-practice',
      source: expect.stringContaining('school'),
    });
    expect(at(9, 8, 5)!.grade).toBe('not-to-be-flown');
    expect(at(0.1, 0)!.grade).toBe('not-to-be-flown');
  });

  it('gust: gusts of which half takes the approach speed under 1.3 times the stall speed', () => {
    const { approachSpeed, stallSpeed } = flown().flown;
    const spread = 2 * (approachSpeed - 1.3 * stallSpeed);
    const at = (gust: number) => caution(flown({ wind: windOffRunway(0, 3), gust: 3 * knot + gust }), 'gust');
    expect(at(spread - 0.01)).toBeUndefined();
    const found = at(spread + 0.01)!;
    expect(found).toMatchObject({ grade: 'beyond-good-practice', at: 'final', limit: 1.3 });
    expect(found.value).toBeCloseTo((approachSpeed - (spread + 0.01) / 2) / stallSpeed, 9);
  });

  it('aim-before-threshold: the aim point before the runway', () => {
    // What a new user tried: an aim point 140 m short of a spot 60 m in.
    const aim = flown().keys.find(({ id }) => id === 'aim-point')!.along;
    const at = (spot: number) => caution(flown({ runway: { ...runway, spot } }), 'aim-before-threshold')!;
    const found = at(-aim - 20);
    expect(found.message).toMatch(/^The aim point lies 20 m before the landing end of the runway/);
    expect(found).toMatchObject({ grade: 'beyond-good-practice', at: 'aim-point' });
  });

  it('aim-before-threshold: the round-out begun before the runway', () => {
    const { track } = flown();
    const begins = track.find(({ phase }) => phase === 'round-out')!;
    const before = track[track.indexOf(begins) - 1]!.along;
    const at = (spot: number) => caution(flown({ runway: { ...runway, spot } }), 'aim-before-threshold');
    expect(at(-before + 0.5)).toBeUndefined();
    const found = at(-before - 0.5)!;
    expect(found.value).toBeCloseTo(0.5, 6);
    expect(found.message).toContain('round-out begins 10 m before');
  });

  it('base-turn-far: farther past abeam than twice the distance of the downwind leg', () => {
    const plans = [900, 1000, 1100, 1200, 1400].map((feet) => flown({ height: feet * foot, spacing: 400 }));
    const past = ({ keys }: Plan) => -keys.find(({ id }) => id === 'base-turn')!.along;
    expectExactly('base-turn-far', plans, past, (metres) => metres > 800);
    expect(caution(plans.at(-1)!, 'base-turn-far')).toMatchObject({
      grade: 'worth-knowing',
      at: 'base-turn',
    });
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

describe('what a first trial of the program found unsaid is said', () => {
  it('14 kt across, where 9 are the limit, is not to be flown, and 9 would be', () => {
    const found = caution(flown({ wind: windOffRunway(90, 14) }), 'crosswind-over-limit')!;
    expect(found).toMatchObject({
      grade: 'not-to-be-flown',
      message: 'The crosswind is 14 kt; the limit of the Osier 15 is 9 kt.',
      remedy: 'It would be within the wind limits in 9 kt from the same direction, gusts counted.',
    });
  });

  it('an aim point 140 m short of a spot 60 m in', () => {
    const withy = requestFor('withy');
    const at = (spot: number) =>
      planApproach({ ...withy, runway: { ...withy.runway, spot }, detail: 'flight' });
    const plan = at(60);
    const short = -plan.keys.find(({ id }) => id === 'aim-point')!.along;
    expect(short).toBeGreaterThan(110);
    expect(caution(plan, 'aim-before-threshold')!.message).toBe(
      `The aim point lies ${Math.ceil((short - 60) / 10) * 10} m before the landing end of the runway, which lies 60 m before the spot.`,
    );
    expect(caution(at(300), 'aim-before-threshold')).toBeUndefined();
  });

  it('a landing roll of 140 m alike in a calm at 4 C, in 10 kt of tailwind at 40 C and in 20 kt of headwind', () => {
    const roll = (changes: Partial<PlanRequest>) =>
      landingRunOf(flown({ ...withData({ landingRoll: 140 }), ...changes }));
    const cold = roll({ temperature: 277.15 });
    const behind = roll({ temperature: 313.15, wind: windOffRunway(180, 10) });
    const ahead = roll({ wind: windOffRunway(0, 20) });
    expect(cold).toBeLessThan(140);
    // 15 kt over the ground on top of 34 kt of true airspeed: twice as far.
    expect(behind / cold).toBeGreaterThan(2);
    expect(ahead / cold).toBeLessThan(0.6);
    expect(ahead / cold).toBeGreaterThan(0.4);
  });
});

describe('a mass over the one that the figures are for', () => {
  it('is worth knowing where the data name no greatest mass', () => {
    const { most: _, ...mass } = osier.mass;
    const heavy = caution(flown({ mass: osier.mass.reference + 80, ...withData({ mass }) }), 'mass')!;
    expect(heavy).toMatchObject({ grade: 'worth-knowing', limit: osier.mass.reference });
    expect(heavy.message).toMatch(/name no greatest mass\.$/);
    expect(caution(flown({ mass: osier.mass.reference, ...withData({ mass }) }), 'mass')).toBeUndefined();
  });
});

describe('what would be flyable, as a caution says, is', () => {
  const figureIn = (text: string | undefined, unit: string) =>
    Number(new RegExp(`([\\d,]+) ${unit}`).exec(text!)![1]!.replace(',', ''));
  const codes = (changes: Partial<PlanRequest>) => flown(changes).cautions.map(({ code }) => code);
  const windy: readonly CautionCode[] = ['wind-over-limit', 'crosswind-over-limit', 'tailwind'];

  it.each([0, 40, 70, 90, 120, 170, 180])('a weaker wind from %d degrees off the runway', (off) => {
    const strong = flown({ wind: windOffRunway(off, 25), windProfile: 'uniform' });
    const found = saidCautions(strong).filter(({ code }) => windy.includes(code));
    expect(found.length).toBeGreaterThan(0);
    const knots = new Set(found.map(({ remedy }) => figureIn(remedy, 'kt')));
    expect(knots.size).toBe(1);
    const [most] = knots;
    const wind = (speed: number) => ({ wind: windOffRunway(off, speed), windProfile: 'uniform' as const });
    expect(codes(wind(most!)).filter((code) => windy.includes(code))).toEqual([]);
    expect(codes(wind(most! + 1)).some((code) => windy.includes(code))).toBe(true);
  });

  it('a shallower turn', () => {
    const most = figureIn(caution(flown({ bank: 50 * degrees }), 'stall-margin')!.remedy, 'degrees');
    expect(codes({ bank: most * degrees })).not.toContain('stall-margin');
    expect(codes({ bank: (most + 1) * degrees })).toContain('stall-margin');
  });

  it('a faster glide, or a faster approach in gusts', () => {
    const glide = (knots: number) => withData({ glide: { idle: { speed: knots * knot, ratio: 6.4 } } });
    const reference = { mass: osier.mass.reference };
    const least = figureIn(caution(flown({ ...glide(36), ...reference }), 'slow')!.remedy, 'kt');
    expect(codes({ ...glide(least), ...reference })).not.toContain('slow');
    expect(codes({ ...glide(least - 1), ...reference })).toContain('slow');

    const gusts = { wind: windOffRunway(0, 3), gust: 18 * knot, ...reference };
    const approach = (knots: number) => ({
      ...gusts,
      ...withData({ speeds: { ...osier.speeds, approach: knots * knot } }),
    });
    const enough = figureIn(caution(flown(approach(44)), 'gust')!.remedy, 'kt');
    expect(codes(approach(enough))).not.toContain('gust');
    expect(codes(approach(enough - 1))).toContain('gust');
  });

  it('a faster approach, where the wind takes speed from it on the way down, or the wing does not bear the pull', () => {
    const withy = requestFor('withy');
    const reference = { mass: withy.aircraft.mass.reference };
    const codesAt = (request: PlanRequest) =>
      planApproach({ ...request, ...reference, detail: 'flight' }).cautions.map(
        ({ code, grade }) => `${code} ${grade}`,
      );
    const at = (approach: number, touchdown: number, wind: PlanRequest['wind']): PlanRequest => ({
      ...withy,
      wind,
      aircraft: {
        ...withy.aircraft,
        speeds: { ...withy.aircraft.speeds, approach: approach * knot, touchdown: touchdown * knot },
      },
    });
    const remedyOf = (request: PlanRequest, code: CautionCode) =>
      figureIn(
        saidCautions(planApproach({ ...request, ...reference, detail: 'flight' })).find(
          (each) => each.code === code,
        )!.remedy,
        'kt',
      );
    const slow = (approach: number) => at(approach, 45, windOffRunway(0, 20));
    const enough = remedyOf(slow(55), 'slow');
    expect(enough).toBeGreaterThan(55);
    expect(codesAt(slow(enough)).join()).not.toContain('slow');
    const stalls = (approach: number) => at(approach, 42.2, windOffRunway(0, 12));
    const borne = remedyOf(stalls(46), 'round-out-pull');
    expect(borne).toBeGreaterThan(46);
    expect(codesAt(stalls(borne))).not.toContain('round-out-pull not-to-be-flown');
  });

  it('no place of the spot, where the runway is too short for the landing', () => {
    const short = { runway: { ...runway, length: 110, spot: 40 } };
    const found = saidCautions(flown(short)).filter(({ code }) =>
      ['aim-before-threshold', 'landing-distance'].includes(code),
    );
    expect(found).toHaveLength(2);
    for (const { remedy } of found) expect(remedy).toMatch(/^The runway is too short for this landing/);
  });

  it('no spot beyond the runway', () => {
    const low = {
      height: 400 * foot,
      wind: windOffRunway(0, 16),
      runway: { ...runway, length: 100, spot: 40 },
    };
    const far = flown(low);
    expect(far.touchdown.along).toBeLessThan(-100);
    expect(saidCautions(far).find(({ code }) => code === 'off-runway')!.remedy).toBe(
      'It has to end on the runway: another height, or less wind.',
    );
  });

  it('a spot farther in, for what stands under final', () => {
    const tree = { what: 'tree', height: 28, along: -150, across: 0, width: 8 };
    const at = (spot: number, moved: number) => ({
      runway: { ...runway, spot, obstacles: [{ ...tree, along: tree.along - moved }] },
    });
    const { remedy, message } = caution(flown(at(150, 0)), 'obstacle-clearance')!;
    expect(message).toMatch(/^The path meets the tree/);
    const farther = figureIn(remedy, 'm');
    expect(remedy).toMatch(/^With the spot \d+ m farther in, the path would clear the tree\.$/);
    expect(codes(at(150 + farther, farther))).not.toContain('obstacle-clearance');
    expect(codes(at(150 + farther - 40, farther - 40))).toContain('obstacle-clearance');
  });

  it('a round-out begun higher', () => {
    for (const [loadFactor, height] of [
      [1.15, 2.2],
      [1.2, 1.5],
      [1.3, 1.2],
    ] as const) {
      const round = (metres: number) => withData({ roundOut: { height: metres, loadFactor } });
      const { remedy } = caution(flown(round(height)), 'round-out-pull')!;
      expect(codes(round(figureIn(remedy, 'ft') * foot))).not.toContain('round-out-pull');
    }
  });

  it('a spot farther in, or nearer the landing end', () => {
    const at = (spot: number) => ({ runway: { ...runway, spot } });
    const aim = caution(flown(at(40)), 'aim-before-threshold')!.remedy;
    expect(codes(at(40 + figureIn(aim, 'm')))).not.toContain('aim-before-threshold');
    const long = runway.length - 40;
    const roll = caution(flown(at(long)), 'landing-distance')!.remedy;
    expect(codes(at(long - figureIn(roll, 'm')))).not.toContain('landing-distance');
    const off = caution(flown(at(runway.length + 30)), 'off-runway')!.remedy;
    expect(codes(at(runway.length + 30 - figureIn(off, 'm')))).not.toContain('off-runway');
  });

  it('the landing the other way, in a tailwind', () => {
    const wind = windOffRunway(180, 8);
    const tight = { wind, runway: { ...runway, spot: runway.length - 100 } };
    const { remedy } = caution(flown(tight), 'landing-distance')!;
    const back = Number(/other way, the roll would be (\d+) m/.exec(remedy!)![1]);
    const other = landingRunOf({ ...flown({ wind }), runway: { heading: runwayHeading + Math.PI } });
    expect(back).toBeGreaterThanOrEqual(other - 1e-6);
    expect(back).toBeLessThan(other + 10);
  });

  it('given for whatever is not to be flown', () => {
    const grave = [
      { wind: windOffRunway(90, 14) },
      { wind: windOffRunway(180, 8), ...withData({ limits: { ...osier.limits, tailwind: 5 * knot } }) },
      { bank: 60 * degrees },
      { height: 600 * foot },
      { mass: 500, ...withData({ mass: { ...osier.mass, most: 450 } }) },
      { runway: { ...runway, spot: runway.length - 40 } },
      { runway: { ...runway, spot: runway.length + 40 } },
      withData({ glide: { idle: { speed: 30.5 * knot, ratio: 6.4 } } }),
    ].map((changes) => saidCautions(flown(changes)).filter(({ grade }) => grade === 'not-to-be-flown'));
    for (const cautions of grave) {
      expect(cautions.length).toBeGreaterThan(0);
      for (const { code, remedy } of cautions) expect(remedy, code).toMatch(/^[A-Z].*\.$/);
    }
    expect(new Set(grave.flat().map(({ code }) => code)).size).toBe(8);
  });
});

describe('every caution', () => {
  it('prints a limit no higher than it is, and the digit that tells a value from it', () => {
    const limits = { ...osier.limits, crosswind: 8.1 * knot, wind: 20 * knot };
    const words = (off: number, knots: number) =>
      saidCautions(flown({ wind: windOffRunway(off, knots), ...withData({ limits }) }))
        .filter(({ code }) => code.endsWith('wind-over-limit'))
        .map(({ message }) => message);
    expect(words(90, 12)).toEqual(['The crosswind is 12 kt; the limit of the Osier 15 is 8 kt.']);
    expect(words(90, 8.2)).toEqual(['The crosswind is 8.2 kt; the limit of the Osier 15 is 8.1 kt.']);
    expect(words(0, 20.3)).toEqual(['The wind is 20.3 kt; the limit of the Osier 15 is 20 kt.']);
  });

  it('says what it found, the limit and where the limit comes from', () => {
    const cautions = saidCautions(
      planned({ height: 300 * foot, wind: windOffRunway(90, 20), bank: 50 * degrees }),
    );
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
