import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requestFor } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import type { CalibrationRow } from '../terms/aircraft.ts';
import { RequestError } from '../terms/errors.ts';
import { checkCalibration, indicatedSpeed, noCalibration, toEquivalent, toIndicated } from './calibration.ts';
import { resolveAircraft } from './resolve-aircraft.ts';

const table: CalibrationRow[] = [
  { indicated: 15, equivalent: 17 },
  { indicated: 20, equivalent: 21 },
  { indicated: 30, equivalent: 29 },
];

describe('a calibration table', () => {
  it('gives its own rows, the middle between them, and keeps the difference of its end rows beyond them', () => {
    for (const { indicated, equivalent } of table) {
      expect(toEquivalent(indicated, table)).toBeCloseTo(equivalent, 12);
      expect(toIndicated(equivalent, table)).toBeCloseTo(indicated, 12);
    }
    expect(toEquivalent(25, table)).toBeCloseTo(25, 12);
    expect(toEquivalent(10, table)).toBeCloseTo(12, 12);
    expect(toEquivalent(40, table)).toBeCloseTo(39, 12);
  });

  it('leads back from equivalent to indicated', () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 80, noNaN: true }), (speed) => {
        expect(toIndicated(toEquivalent(speed, table), table)).toBeCloseTo(speed, 9);
      }),
      { numRuns: 200, seed: 7 },
    );
  });

  it('of one row is a constant difference, and of none is none', () => {
    const one = [{ indicated: 20, equivalent: 22 }];
    expect(toEquivalent(15, one)).toBeCloseTo(17, 12);
    expect(toEquivalent(33, one)).toBeCloseTo(35, 12);
    expect(toEquivalent(33, noCalibration)).toBe(33);
    expect(indicatedSpeed(33, {})).toBe(33);
  });

  it.each<[string, CalibrationRow[]]>([
    ['indicated speeds that fall', [table[1]!, { indicated: 19, equivalent: 25 }]],
    ['equivalent speeds that fall', [table[1]!, { indicated: 25, equivalent: 20 }]],
    ['a row twice', [table[1]!, table[1]!]],
    ['a speed of nothing', [{ indicated: 0, equivalent: 2 }]],
    ['an equivalent speed of nothing', [{ indicated: 2, equivalent: 0 }]],
    ['an indicated speed twice', [table[1]!, { indicated: 20, equivalent: 25 }]],
    ['an equivalent speed twice', [table[1]!, { indicated: 25, equivalent: 21 }]],
    ['not a number', [table[0]!, { indicated: Number.NaN, equivalent: 30 }]],
  ])('is refused for %s', (_words, rows) => {
    expect(() => checkCalibration(rows)).toThrow(
      new RequestError('aircraft.calibration', { code: 'calibration-not-rising' }),
    );
    const request = requestFor('osier');
    expect(() => planApproach({ ...request, aircraft: { ...request.aircraft, calibration: rows } })).toThrow(
      'calibration',
    );
  });
});

describe('a calibrated aircraft', () => {
  const { aircraft } = requestFor('osier');
  const idle = aircraft.glide.idle as { speed: number; ratio: number };
  const flown = resolveAircraft({ ...aircraft, calibration: table });

  it('has every airspeed made equivalent, and no ratio or limit touched', () => {
    const eas = (speed: number) => toEquivalent(speed, table);
    expect(flown.speeds.stall).toBeCloseTo(eas(aircraft.speeds.stall), 12);
    expect(flown.speeds.touchdown).toBeCloseTo(eas(aircraft.speeds.touchdown), 12);
    expect(flown.speeds.approach).toBeCloseTo(eas(aircraft.speeds.approach), 12);
    expect(flown.glide.idle).toMatchObject({ speed: eas(idle.speed), ratio: idle.ratio });
    const stopped = aircraft.glide.stopped as { speed: number; ratio: number };
    expect(flown.glide.stopped).toMatchObject({ speed: eas(stopped.speed), ratio: stopped.ratio });
    expect(flown.steepApproach!.speed).toBeCloseTo(eas(aircraft.steepApproach!.speed), 12);
    expect(flown.steepApproach!.ratio).toBe(aircraft.steepApproach!.ratio);
    expect(flown.limits).toEqual(aircraft.limits);
  });

  it('glides at the equivalent speed for the mass of the day', () => {
    const mass = aircraft.mass.reference;
    const plan = planApproach({
      ...requestFor('osier', { mass }),
      aircraft: { ...aircraft, calibration: table },
    });
    expect(plan.track[0]!.eas).toBeCloseTo(toEquivalent(idle.speed, table), 9);
    expect(indicatedSpeed(plan.flown.glideSpeed, plan.aircraft)).toBeCloseTo(idle.speed, 9);
  });

  it('has measured points refused by the name of their glide', () => {
    const none = { points: [] };
    const refused = (changes: object) => {
      try {
        resolveAircraft({ ...aircraft, ...changes });
      } catch (error) {
        return (error as RequestError).field;
      }
      return undefined;
    };
    expect(refused({ glide: { idle: none } })).toBe('aircraft.glide.idle.points');
    expect(refused({ glide: { idle, stopped: none } })).toBe('aircraft.glide.stopped.points');
    expect(refused({ steepApproach: none })).toBe('aircraft.glide.steep-approach.points');
  });

  it('has the speeds of its measured points made equivalent before the polar is fitted', () => {
    const points = [15, 20, 24, 30].map((speed) => ({ speed, sink: 2 + 0.02 * (speed - 19) ** 2 }));
    const equivalent = points.map(({ speed, sink }) => ({ speed: toEquivalent(speed, table), sink }));
    const one = resolveAircraft({ ...aircraft, calibration: table, glide: { idle: { points } } });
    const other = resolveAircraft({ ...aircraft, glide: { idle: { points: equivalent } } });
    expect(one.glide.idle).toEqual(other.glide.idle);
  });
});
