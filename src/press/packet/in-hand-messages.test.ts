import { describe, expect, it } from 'vitest';
import { sampleRequest } from '../../../tests/press-sample.ts';
import { planApproach } from '../../flight/plan/planner.ts';
import type { Gate, Plan } from '../../flight/terms/plan.ts';
import { metresPerFoot as foot } from '../../units/factors.ts';
import { inHandMessages } from './in-hand-messages.ts';

const flown = planApproach(sampleRequest);
const feet = { height: 'ft', distance: 'm', speed: 'kt' } as const;
const metric = { height: 'm', distance: 'm', speed: 'km/h' } as const;
const gateAt = (at: Gate['at'], low: number | null, plan: number, unit = foot): Gate => ({
  at,
  low: low === null ? null : low * unit,
  plan: plan * unit,
  high: 2000 * unit,
});
const said = (
  gates: readonly Gate[],
  changes: Partial<Plan> = {},
  units: typeof feet | typeof metric = feet,
) =>
  inHandMessages({ ...flown, cautions: [], gates, ...changes }, units).map(({ words }) =>
    words.replaceAll('\u00a0', ' '),
  );

describe('a plan that begins near the floor of its band', () => {
  it('is told so, at the height that it begins with, with what is ours', () => {
    expect(said([gateAt('base-key', 680, 700)])).toEqual([
      'Osier 15, runway 24, wind 210° 12 kt, engine idling: the plan stands near the floor of its band at the base key, 20 ft above it. Begin higher: 50 ft in hand is the least, a figure of ours, no source',
    ]);
    expect(inHandMessages({ ...flown, gates: [gateAt('base-key', 680, 700)] }, feet)).toEqual([
      expect.objectContaining({ severity: 'warning', rule: 'in-hand', keys: ['height', 'approach'] }),
    ]);
  });

  it('is one with less than 50 ft in hand as printed, and no other', () => {
    expect(said([gateAt('downwind-key', 950, 1000)])).toEqual([]);
    expect(said([gateAt('downwind-key', 950.5, 1000)])[0]).toContain('at the downwind key, 40 ft above it');
    expect(said([gateAt('downwind-key', 1000, 1000)])[0]).toContain('stands at the floor of its band');
    // The edge is printed as the plan.
    expect(said([gateAt('downwind-key', 1001, 1002)])[0]).toContain('stands at the floor of its band');
    expect(said([gateAt('downwind-key', 1000, 960)])[0]).toContain(
      'stands below the floor of its band at the downwind key, by 40 ft.',
    );
  });

  it('is found at the first gate alone', () => {
    const far = gateAt('downwind-key', 700, 1000);
    const near = gateAt('base-key', 680, 690);
    expect(said([far, near])).toEqual([]);
    expect(said([near, far])).toHaveLength(1);
    expect(said([gateAt('final', 400, 410)])).toEqual([]);
  });

  it('is not looked for where there is no floor, or where the plan is not to be flown', () => {
    expect(said([])).toEqual([]);
    expect(said([gateAt('base-key', null, 700)])).toEqual([]);
    expect(said([gateAt('base-key', 2100, 700)])).toEqual([]);
    expect(said([gateAt('base-key', 680, 700)], { grade: 'not-to-be-flown' })).toEqual([]);
  });

  it('is told in the units of the school, the least rounded up', () => {
    expect(said([gateAt('base-key', 185, 200, 1)], {}, metric)[0]).toMatch(
      /15 m above it\. Begin higher: 20 m in hand is the least/,
    );
    expect(said([gateAt('base-key', 180, 200, 1)], {}, metric)).toEqual([]);
  });
});
