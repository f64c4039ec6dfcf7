import { describe, expect, it } from 'vitest';
import { type AircraftId, aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import { RequestError } from '../terms/errors.ts';
import type { Plan, PlanRequest } from '../terms/plan.ts';
import { leastSoundStart } from './least-sound-start.ts';

const foot = 0.3048;
const tenFeet = 10 * foot;

/** One plan, and those of its cautions that are graver than worth knowing; undefined where nothing can be flown. */
function fly(request: PlanRequest): Plan | undefined {
  try {
    return planApproach({ ...request, detail: 'flight' });
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    return undefined;
  }
}
const sound = (plan: Plan | undefined) =>
  plan?.made === true && plan.cautions.every(({ grade }) => grade === 'worth-knowing');

/** Every 10 ft from the lowest start that may be asked for, one by one. */
function firstSound(request: PlanRequest): number | undefined {
  for (let tens = 20; tens * tenFeet <= 1500; tens++) {
    if (sound(fly({ ...request, height: tens * tenFeet }))) return tens;
  }
  return undefined;
}

describe('where the height asked for lies above the least sound one, and is not sound', () => {
  // As a first reader had it: a mast under the base turn from 1,000 ft, passed lower and higher.
  const request = requestFor('osier', { wind: windOffRunway(-28, 12) });
  const { track } = planApproach({ ...request, detail: 'flight' });
  const base = track.find(({ phase }) => phase === 'base')!;
  const mast = { what: 'mast', height: base.height + 15, along: base.along, across: base.across, width: 6 };
  const masted = { ...request, runway: { ...request.runway, obstacles: [mast] } };

  it('says up to where all heights are sound', () => {
    expect(sound(fly(masted))).toBe(false);
    const start = leastSoundStart(masted, tenFeet);
    const { height, upTo } = start as { height: number; upTo?: number };
    expect(upTo).toBeLessThan(1000 * foot);
    for (let tens = Math.round(height / tenFeet); tens <= Math.round(upTo! / tenFeet); tens++)
      expect(sound(fly({ ...masted, height: tens * tenFeet })), `${tens}0 ft`).toBe(true);
    expect(sound(fly({ ...masted, height: upTo! + tenFeet }))).toBe(false);
    expect(leastSoundStart(request, tenFeet)).toMatchObject({ upTo: undefined });
  });
});

describe.each(aircraftIds)('the least sound start of %s', (id: AircraftId) => {
  it.each([
    ['180', -3],
    ['180', 0],
    ['180', 9],
    ['90', -3],
    ['90', 6],
    ['360', 4],
  ] as const)(
    'of a %s in %d kt down the runway is the first that trying every 10 ft finds',
    (approach, kt) => {
      const request = requestFor(id, {
        approach,
        wind: windOffRunway(kt < 0 ? 180 : 0, Math.abs(kt)),
        // The hedge before the spot is in the way for some from any height: that is another test.
        runway: { ...requestFor(id).runway, obstacles: [] },
      });
      const found = leastSoundStart(request, tenFeet);
      const first = firstSound(request);
      expect(found.height && Math.round(found.height / tenFeet)).toBe(first);
      if (found.height === undefined) return;
      expect(found.plan.keys[0]!.height).toBeCloseTo(found.height, 6);
      expect(found.at).toBe(found.plan.keys[0]!.id);
      expect(sound(found.plan)).toBe(true);
      expect(sound(fly({ ...request, height: found.height - tenFeet }))).toBe(false);
    },
  );

  it('takes more height the more wind is behind', () => {
    const height = (kt: number) => {
      const runway = { ...requestFor(id).runway, obstacles: [] };
      const found = leastSoundStart(
        requestFor(id, { runway, wind: windOffRunway(kt < 0 ? 180 : 0, Math.abs(kt)) }),
        tenFeet,
      );
      return found.height ?? Number.NaN;
    };
    expect(height(-3)).toBeGreaterThan(height(0));
    expect(height(0)).toBeGreaterThan(height(8));
  });

  it('does not depend on the height asked for, nor on a base distance', () => {
    const plain = leastSoundStart(requestFor(id), tenFeet);
    expect(leastSoundStart(requestFor(id, { height: 700 }), tenFeet).height).toBe(plain.height);
    const short = requestFor(id, { approach: '90', options: { '90': { baseDistance: 300 } } });
    expect(leastSoundStart(short, tenFeet).height).toBe(
      leastSoundStart(requestFor(id, { approach: '90' }), tenFeet).height,
    );
  });

  it('is of the downwind key where the 180 after a spiral is what is not sound', () => {
    const wind = windOffRunway(180, 2);
    const minimums = { finalTurn: 450 * foot };
    const runway = { ...requestFor(id).runway, obstacles: [] };
    const spiral = leastSoundStart(requestFor(id, { approach: 'spiral', wind, minimums, runway }), tenFeet);
    const half = leastSoundStart(requestFor(id, { wind, minimums, runway }), tenFeet);
    expect(spiral.height).toBe(half.height);
    expect(spiral).toMatchObject({ at: 'downwind-key' });
  });
});

describe('the least sound start', () => {
  it('is none where no height helps, with what stands against it', () => {
    const across = leastSoundStart(requestFor('osier', { wind: windOffRunway(90, 12) }), tenFeet);
    expect(across.height).toBeUndefined();
    if (across.height === undefined)
      expect(across.against.map(({ code }) => code)).toEqual(['crosswind-over-limit']);
    const mast = { what: 'mast', height: 90, along: -120, across: 0, width: 4 };
    const runway = { ...requestFor('osier').runway, obstacles: [mast] };
    const over = leastSoundStart(requestFor('osier', { runway }), tenFeet);
    expect(over.height).toBeUndefined();
    if (over.height === undefined)
      expect(over.against.map(({ code }) => code)).toContain('obstacle-clearance');
  });

  it('keeps to a minimum that the school has raised', () => {
    const usual = leastSoundStart(requestFor('osier'), tenFeet);
    const raised = leastSoundStart(requestFor('osier', { minimums: { finalTurn: 500 * foot } }), tenFeet);
    expect(raised.height!).toBeGreaterThan(usual.height! + 50 * foot);
  });
});
