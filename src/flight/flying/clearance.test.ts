import { describe, expect, it } from 'vitest';
import { requestFor, runwayHeading, windOffRunway } from '../../../tests/flight-school.ts';
import { type SaidCaution, saidCautions } from '../../../tests/said-cautions.ts';
import { planApproach } from '../plan/planner.ts';
import type { Obstacle } from '../terms/airfield.ts';
import type { Phase, Plan, PlanRequest, TrackSample } from '../terms/plan.ts';
import { closestPass, type Required, type Swept } from './clearance.ts';

const foot = 0.3048;
const fifty = 50 * foot;
const degrees = Math.PI / 180;
const { runway, aircraft: osier } = requestFor('osier');

const usual: Required = { over: fifty, near: fifty, nearInLanding: osier.wing.span };

const asked = (changes: Partial<PlanRequest> = {}) => requestFor('osier', { detail: 'flight', ...changes });
const flown = (changes: Partial<PlanRequest> = {}) => planApproach(asked(changes));
const cautioned = (obstacle: Obstacle, changes: Partial<PlanRequest> = {}): SaidCaution | undefined =>
  saidCautions(flown({ ...changes, runway: { ...runway, obstacles: [obstacle] } })).find(
    ({ code }) => code === 'obstacle-clearance',
  );

/** A straight, level flight along the landing direction, wings level unless a bank is given. */
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
    // The left tip, 5 m from the middle, is 30 degrees ahead of square: 2.5 m forward and 4.33 m out; the mast is 7 m
    // out.
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
      // Over half a span and the width, the path comes down by a few metres.
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
