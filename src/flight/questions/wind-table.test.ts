import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import { windTable } from './wind-table.ts';

const knot = 1852 / 3600;
const calm = { headwind: 0, crosswind: 0 };
const wind = (headwind: number, crosswind: number) => ({
  headwind: headwind * knot,
  crosswind: crosswind * knot,
});

describe.each(aircraftIds)('the table of winds of %s', (id) => {
  it('has in no wind what the calm plan has, whatever the wind of its request', () => {
    const plan = planApproach(requestFor(id));
    const [row] = windTable(requestFor(id, { wind: windOffRunway(70, 12), gust: 9 }), [calm]);
    expect(row).toMatchObject({ ...calm, made: true });
    expect(row!.pastAbeam).toBeCloseTo(plan.solved.value, 6);
    expect(row!.keys).toEqual(plan.keys);
    expect(row!.crabOnBase).toBeCloseTo(0, 9);
    const [key, turn] = [plan.keys[0]!, plan.keys[1]!];
    expect(row!.seconds).toBeCloseTo(turn.time - key.time, 9);
    // At the planned 30 degrees from the first turn on.
    expect(row!.steepestBank).toBeCloseTo(plan.flown.bank, 6);
  });

  it('has in a wind what a plan in that wind has', () => {
    for (const [ahead, across] of [
      [8, 5],
      [10, -6],
      [-3, 4],
    ] as const) {
      const speed = Math.hypot(ahead, across);
      const degrees = (Math.atan2(across, ahead) * 180) / Math.PI;
      const plan = planApproach(requestFor(id, { wind: windOffRunway(degrees, speed) }));
      const [row] = windTable(requestFor(id), [wind(ahead, across)]);
      expect(row!.made).toBe(plan.made);
      expect(row!.pastAbeam).toBeCloseTo(plan.solved.value, 3);
      for (const [i, each] of row!.keys.entries()) expect(each.height).toBeCloseTo(plan.keys[i]!.height, 3);
    }
  });

  it('flies each wind with its veer, and says what is across at the key', () => {
    const request = requestFor(id);
    const veer = (25 * Math.PI) / 180;
    const windVeer = { airfield: { ...request.airfield, windVeer: veer } };
    const plan = planApproach({ ...requestFor(id, { wind: windOffRunway(0, 8) }), ...windVeer });
    const rows = windTable(request, [wind(8, 0), { ...wind(8, 0), veer }, { ...wind(8, 0), veer: -veer }]);
    expect(rows[1]!.pastAbeam).toBeCloseTo(plan.solved.value, 3);
    expect(rows.map(({ acrossAtKey }) => Math.sign(Math.round(acrossAtKey! * 10)))).toEqual([0, 1, -1]);
    expect(rows[1]!.pastAbeam).not.toBeCloseTo(rows[0]!.pastAbeam!, 0);
    // The airfield's own, where the wind has none.
    expect(windTable({ ...request, ...windVeer }, [wind(8, 0)])[0]!.keys).toEqual(rows[1]!.keys);
  });

  it('turns base sooner, in place and time, the more wind is ahead', () => {
    const rows = windTable(
      requestFor(id),
      [0, 4, 8, 12, 15].map((knots) => wind(knots, 0)),
    );
    for (let i = 1; i < rows.length; i++) {
      expect(rows[i]!.pastAbeam).toBeLessThan(rows[i - 1]!.pastAbeam!);
      expect(rows[i]!.seconds).toBeLessThan(rows[i - 1]!.seconds!);
    }
  });

  it('points the nose into the wind on base: left of the track on a left base with wind ahead of the runway', () => {
    const [left] = windTable(requestFor(id, { circuit: 'left' }), [wind(10, 0)]);
    const [right] = windTable(requestFor(id, { circuit: 'right' }), [wind(10, 0)]);
    // On a left base the landing direction, from which a headwind comes, is on the left.
    expect(left!.crabOnBase).toBeLessThan(-0.05);
    expect(right!.crabOnBase).toBeCloseTo(-left!.crabOnBase!, 6);
    const [behind] = windTable(requestFor(id, { circuit: 'left' }), [wind(-4, 0)]);
    expect(behind!.crabOnBase).toBeGreaterThan(0.02);
    const [across] = windTable(requestFor(id, { circuit: 'left' }), [wind(0, 8)]);
    expect(across!.crabOnBase).toBeCloseTo(0, 6);
  });

  it('has the crab of the wind triangle on base', () => {
    const request = requestFor(id, { windProfile: 'uniform' });
    const [row] = windTable(request, [wind(8, 0)]);
    const plan = planApproach(requestFor(id, { windProfile: 'uniform', wind: windOffRunway(0, 8) }));
    const { tas, sink } = plan.track.findLast((sample) => sample.phase === 'base')!;
    const sin = (8 * knot) / Math.sqrt(tas * tas - sink * sink);
    expect(Math.sin(Math.abs(row!.crabOnBase!))).toBeCloseTo(sin, 4);
  });

  it('is mirrored on the other hand with the wind from the other side', () => {
    const [left] = windTable(requestFor(id, { circuit: 'left' }), [wind(6, 5)]);
    const [right] = windTable(requestFor(id, { circuit: 'right' }), [wind(6, -5)]);
    expect(right!.pastAbeam).toBeCloseTo(left!.pastAbeam!, 5);
    expect(right!.seconds).toBeCloseTo(left!.seconds!, 5);
    expect(right!.crabOnBase).toBeCloseTo(-left!.crabOnBase!, 6);
    expect(right!.steepestBank).toBeCloseTo(left!.steepestBank, 6);
    left!.keys.forEach((key, i) => {
      const other = right!.keys[i]!;
      expect(other).toMatchObject({ id: key.id });
      expect(other.across).toBeCloseTo(-key.across, 4);
      expect(other.along).toBeCloseTo(key.along, 4);
    });
  });
});

describe('the table of winds', () => {
  it('says which winds the approach cannot be made in', () => {
    const rows = windTable(requestFor('osier'), [calm, wind(40, 0)]);
    expect(rows.map(({ made }) => made)).toEqual([true, false]);
    expect(rows[1]!.grade).toBe('not-to-be-flown');
  });

  it('has the cautions and the grade that a plan in that wind has', () => {
    const low = { minimums: { finalTurn: 150 } };
    const rows = windTable(requestFor('osier', low), [wind(-4, 0), wind(4, 0), wind(0, 12)]);
    const plans = [windOffRunway(180, 4), windOffRunway(0, 4), windOffRunway(90, 12)].map((each) =>
      planApproach(requestFor('osier', { ...low, wind: each, detail: 'flight' })),
    );
    expect(rows.map(({ grade }) => grade)).toEqual(plans.map(({ grade }) => grade));
    expect(rows[0]!.grade).toBe('not-to-be-flown');
    const codes = ({ cautions }: Pick<(typeof plans)[0], 'cautions'>) => cautions.map(({ code }) => code);
    expect(rows.map(codes)).toEqual(plans.map(codes));
    expect(codes(rows[2]!)).toContain('crosswind-over-limit');
  });

  it('throws what is wrong with the request itself', () => {
    const request = requestFor('osier', { bank: 2 });
    expect(() => windTable(request, [calm, wind(5, 0)])).toThrow('bank');
    expect(() => windTable(requestFor('osier', { spacing: 1 }), [wind(5, 0)])).toThrow('spacing');
  });

  it('has no base turn for an approach that starts on base leg, and its crab', () => {
    const [row] = windTable(requestFor('osier', { approach: '90' }), [wind(8, 0)]);
    expect(row).toMatchObject({ made: true, pastAbeam: undefined, seconds: undefined });
    expect(Math.abs(row!.crabOnBase!)).toBeGreaterThan(0.05);
  });

  it.each(['360', 'spiral'] as const)('shows the steeper circle of the %s in more wind', (approach) => {
    const rows = windTable(requestFor('osier', { approach, options: { spiral: { circles: 1 } } }), [
      calm,
      wind(12, 0),
    ]);
    for (const row of rows) expect(row.made).toBe(true);
    expect(rows[1]!.steepestBank).toBeGreaterThan(rows[0]!.steepestBank - 1e-9);
  });
});
