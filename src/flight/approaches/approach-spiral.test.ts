import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import { RequestError } from '../terms/errors.ts';
import type { Plan } from '../terms/plan.ts';

const foot = 0.3048;
const degrees = Math.PI / 180;
const winds = [
  ['calm', 0, 0],
  ['10 kt ahead', 0, 10],
  ['8 kt across', 90, 8],
] as const;
const cases = aircraftIds.flatMap((id) =>
  winds.flatMap(([words, from, knots]) =>
    [false, true].map((drift) => ({ id, words, from, knots, drift, how: drift ? 'drifting' : 'held' })),
  ),
);
const key = (plan: Plan, id: string) => plan.keys.find((each) => each.id === id)!;
const circling = (plan: Plan) => plan.track.filter(({ phase }) => phase === 'circle');
const steepest = (plan: Plan) => Math.max(...circling(plan).map(({ bank }) => Math.abs(bank)));

/** Part of a whole turn: drifting circles begin on the heading of the downwind leg and end on one that holds its track. */
const crab = 20 / 360;

/** Whole turns flown, counted from the headings. */
function turnsOf(plan: Plan): number {
  const headings = circling(plan).map(({ heading }) => heading);
  let turned = 0;
  for (let i = 1; i < headings.length; i++) {
    const step = headings[i]! - headings[i - 1]!;
    turned += Math.atan2(Math.sin(step), Math.cos(step));
  }
  return Math.abs(turned) / (2 * Math.PI);
}

describe.each(cases)('the spiral of $id with $how circles, $words', ({ id, from, knots, drift }) => {
  const request = requestFor(id, {
    approach: 'spiral',
    options: { spiral: { drift } },
    wind: windOffRunway(from, knots),
    detail: 'flight',
  });
  const plan = planApproach(request);

  it('comes to the downwind key at its height, abeam the spot at the spacing', () => {
    expect(plan.made).toBe(true);
    expect(plan.track[0]!.height).toBeCloseTo(2500 * foot, 9);
    const at = key(plan, 'downwind-key');
    expect(Math.abs(at.height - plan.flown.keyHeight)).toBeLessThan(0.5);
    expect(Math.abs(at.along)).toBeLessThan(0.5);
    expect(Math.abs(Math.abs(at.across) - plan.flown.spacing)).toBeLessThan(0.5);
  });

  it('flies whole circles, as many as it says, but for the crab that the downwind leg needs', () => {
    expect(Math.abs(turnsOf(plan) - plan.circles!.flown)).toBeLessThan(crab);
    expect(plan.circles!.flown).toBeGreaterThanOrEqual(1);
  });

  it('allows as many as fit under 45 degrees of bank, and one more needs more', () => {
    const { allowed } = plan.circles!;
    expect(allowed).toBeGreaterThanOrEqual(plan.circles!.flown);
    const most = planApproach({
      ...request,
      options: { spiral: { ...request.options?.spiral, circles: allowed } },
    });
    expect(Math.abs(turnsOf(most) - allowed)).toBeLessThan(crab);
    expect(steepest(most)).toBeLessThanOrEqual(45 * degrees + 1e-6);
    const more = planApproach({
      ...request,
      options: { spiral: { ...request.options?.spiral, circles: allowed + 1 } },
    });
    const over = more.made ? steepest(more) > 45 * degrees : true;
    expect(over, `${allowed + 1} circles at ${steepest(more) / degrees} degrees`).toBe(true);
  });

  it('flies shallow ones where no number is asked for: no steeper than the planned bank, one more is', () => {
    expect(steepest(plan)).toBeLessThanOrEqual(plan.flown.bank + 1e-6);
    const more = planApproach({
      ...request,
      options: { spiral: { ...request.options?.spiral, circles: plan.circles!.flown + 1 } },
    });
    expect(more.made ? steepest(more) : Number.POSITIVE_INFINITY).toBeGreaterThan(plan.flown.bank);
  });

  it(drift ? 'keeps one bank while the wind carries it' : 'holds its circle on the ground', () => {
    const samples = circling(plan);
    if (drift) {
      const banks = samples.map(({ bank }) => Math.abs(bank));
      const steady = banks.filter((bank) => Math.abs(bank - plan.solved.value) < 1e-6);
      expect(plan.solved).toMatchObject({ name: 'circle-bank', unit: 'deg' });
      expect(steady.length / banks.length).toBeGreaterThan(0.85);
      return;
    }
    expect(plan.solved).toMatchObject({ name: 'circle-radius', unit: 'm' });
    const side = plan.circuit === 'right' ? 1 : -1;
    const centre = side * (plan.flown.spacing - plan.solved.value);
    for (const { along, across } of samples) {
      const off = Math.hypot(along, across - centre) - plan.solved.value;
      expect(Math.abs(off)).toBeLessThan(0.5);
    }
  });
});

describe('the spiral', () => {
  it('drifts by the wind times its time', () => {
    const knot = 1852 / 3600;
    const plan = planApproach(
      requestFor('osier', {
        approach: 'spiral',
        options: { spiral: { drift: true } },
        windProfile: 'uniform',
        wind: windOffRunway(0, 8),
      }),
    );
    const samples = circling(plan);
    const [first, last] = [samples[0]!, samples.at(-1)!];
    // The roll in and out, and the falling true airspeed, leave the circle through the air open by a few metres.
    expect(Math.abs(first.along - last.along - 8 * knot * (last.time - first.time))).toBeLessThan(40);
  });

  it('has smaller and steeper circles the more of them are asked for', () => {
    const plans = [1, 2, 3].map((circles) =>
      planApproach(
        requestFor('osier', { approach: 'spiral', options: { spiral: { circles } }, detail: 'flight' }),
      ),
    );
    for (let i = 1; i < plans.length; i++) {
      expect(plans[i]!.solved.value).toBeLessThan(plans[i - 1]!.solved.value);
      expect(steepest(plans[i]!)).toBeGreaterThan(steepest(plans[i - 1]!));
    }
  });

  it('takes whole numbers of circles, 1 to 20', () => {
    for (const circles of [0, 1.5, 21, Number.NaN]) {
      expect(() =>
        planApproach(requestFor('osier', { approach: 'spiral', options: { spiral: { circles } } })),
      ).toThrow(RequestError);
    }
  });
});
