import { describe, expect, it } from 'vitest';
import { readSchool } from '../school/read.ts';
import { flownChecks } from './flown.ts';
import { flyersOf } from './flyers.ts';
import { limitChecks, limitRows } from './limits.ts';
import { tradeChecks } from './trade.ts';

const lessons = new URL('../../lessons', import.meta.url).pathname;
const flyers = flyersOf((await readSchool(lessons)).value!);

describe.each(flyers.map((flyer) => [flyer.aircraft.name, flyer] as const))('%s, flown', (_name, flyer) => {
  it.each(flownChecks(flyer).map((check) => [`${check.quantity}, ${check.inputs}`, check] as const))(
    '%s: as the formula has it',
    (_quantity, { formula, flown, allowed, verdict }) => {
      expect(Math.abs(flown - formula)).toBeLessThanOrEqual(allowed);
      expect(verdict).toBe('agrees');
    },
  );
});

it('a gliding turn is a little tighter than a level one, for the glide takes a part of the speed', () => {
  const osier = flyers.find(({ aircraft }) => aircraft.name === 'Osier 15')!;
  const radius = flownChecks(osier).find(({ quantity }) => quantity.startsWith('Radius'))!;
  // Best-glide speed at the flown mass, from the aircraft's file; density ratio at 310 ft from the standard table.
  const tas = (42 * Math.sqrt(365 / 390) * 1852) / 3600 / Math.sqrt(0.991);
  const level = tas ** 2 / (9.80665 * Math.tan(Math.PI / 6));
  expect(radius.flown / level).toBeGreaterThan(0.98);
  expect(radius.flown / level).toBeLessThan(0.99);
});

describe('the limits behind the cautions', () => {
  it('are the published ones', () => {
    const results = limitChecks(flyers[0]!);
    expect(results.map(({ row }) => row.id)).toEqual([...limitRows]);
    expect(results.map(({ ours }) => ours[0])).toEqual([45, 45, 50, 300, 1.3, 5]);
    expect(results.every(({ verdict }) => verdict === 'agrees')).toBe(true);
  });
});

describe('figures of the trade', () => {
  const results = tradeChecks(flyers);

  it('are told for each aircraft, in calm air and in the school’s wind', () => {
    const ofOne = results.filter(({ row }) => row.id === 'pp_360_dw');
    expect(ofOne.map(({ aircraft, wind }) => [aircraft, wind!.speed > 0])).toEqual(
      flyers.flatMap(({ aircraft }) => [
        [aircraft.name, false],
        [aircraft.name, true],
      ]),
    );
  });

  it('say where an aircraft does not fit, and are not tuned to', () => {
    for (const { row, ours, fits } of results) {
      if (ours === undefined) {
        expect(fits).toBe(false);
        continue;
      }
      const [low, high] = [row.value, row.value].flat() as [number, number];
      const slack = row.tolerance.abs ?? 0;
      const above = ours >= low - slack - 1e-3;
      const below = ours <= (Array.isArray(row.value) ? (row.value[1] as number) : high) + slack + 1e-3;
      const expected = {
        'at most': below,
        'at least': above,
        about: above && below,
        between: above && below,
      };
      expect(fits, `${row.id} ${ours}`).toBe(expected[row.trade!]);
    }
    expect(results.some(({ fits }) => !fits)).toBe(true);
    expect(results.some(({ fits }) => fits)).toBe(true);
  });

  it('hold a figure of the aircraft against its own file', () => {
    const osier = results.find(({ row, aircraft }) => row.id === 'pp_13' && aircraft === 'Osier 15')!;
    expect(osier.ours).toBeCloseTo(45 / 29, 9);
  });
});
