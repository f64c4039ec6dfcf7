import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import { resolveRequest } from '../plan/request.ts';
import { Flight } from './fly.ts';
import { ACROSS, ALONG, HEADING } from './motions.ts';
import { closeApproach, type OpenApproach } from './open-approach.ts';
import { finalLegs, joinFromBase } from './pattern-legs.ts';
import type { Side } from './procedure.ts';

const bank = Math.PI / 6;
const conditionsIn = (degrees: number, knots: number) =>
  resolveRequest(requestFor('osier', { wind: windOffRunway(degrees, knots) })).conditions;

/** From base leg, with the start of the turn to final left open. */
function fromBase(side: Side, height: number, degrees = 0, knots = 0) {
  const conditions = conditionsIn(degrees, knots);
  const approaching: OpenApproach = {
    start: { along: -600, across: side * 600, height, eas: conditions.polar.speed },
    stages: [{ before: [], join: joinFromBase(side, bank, conditions) }],
    after: finalLegs(conditions, 1.2),
  };
  return { approaching, conditions };
}

describe('an approach brought on to its centreline', () => {
  it.each([
    [0, 0],
    [0, 12],
    [90, 8],
    [-90, 8],
    [150, 6],
  ])(
    'ends its turn on it, wings level and along it, in a wind from %i degrees of %i kt',
    (degrees, knots) => {
      for (const side of [1, -1] as const) {
        const { approaching, conditions } = fromBase(side, 160, degrees, knots);
        const { procedure, miss, joinValues } = closeApproach(approaching, conditions)!;
        const flight = new Flight(conditions, 0, 'honest');
        flight.begin(procedure.start, procedure.legs[0]!);
        for (const leg of procedure.legs.slice(0, 2)) flight.leg(leg);
        expect(Math.abs(flight.state[ACROSS]!)).toBeLessThan(5e-3);
        expect(joinValues[0]).toBeGreaterThan(0);
        for (const leg of procedure.legs.slice(2)) flight.leg(leg);
        expect(Math.abs(flight.state[ACROSS]!)).toBeLessThan(5e-3);
        expect(flight.state[ALONG]).toBeCloseTo(miss, 3);
        if (degrees % 180 === 0) expect(flight.state[HEADING]).toBeCloseTo(0, 4);
      }
    },
  );

  it('touches down farther along from higher up, by the glide ratio in still air', () => {
    const miss = (height: number) => {
      const { approaching, conditions } = fromBase(1, height);
      return closeApproach(approaching, conditions)!.miss;
    };
    const { ratio } = conditionsIn(0, 0).polar;
    expect((miss(180) - miss(160)) / 20).toBeLessThan(ratio);
    expect((miss(180) - miss(160)) / 20).toBeGreaterThan(0.95 * ratio);
  });

  it('starts from a guess or from another without changing what it finds', () => {
    const { approaching, conditions } = fromBase(-1, 160, 60, 9);
    const found = closeApproach(approaching, conditions)!;
    const again = closeApproach(approaching, conditions, [found.joinValues[0]! * 1.4])!;
    expect(again.joinValues[0]).toBeCloseTo(found.joinValues[0]!, 3);
    expect(again.miss).toBeCloseTo(found.miss, 2);
  });

  it('is not sound where final is reached under the height of the round-out', () => {
    const at = (height: number) => {
      const { approaching, conditions } = fromBase(1, height);
      return closeApproach(approaching, conditions)!;
    };
    expect(at(160).sound).toBe(true);
    expect(at(30).sound).toBe(false);
    expect(at(30).finalHeight).toBeLessThan(conditionsIn(0, 0).aircraft.roundOut.height);
  });

  it('is made in a crosswind only where final is held to the touchdown', () => {
    const seen = new Set<boolean>();
    for (const knots of [26, 29, 30.5, 31, 33]) {
      const wind = windOffRunway(90, knots);
      const request = requestFor('osier', { approach: '90', circuit: 'right', wind, detail: 'flight' });
      const { made, touchdown } = planApproach(request);
      seen.add(made);
      if (made) expect(Math.abs(touchdown.across), `${knots} kt`).toBeLessThan(0.1);
    }
    expect(seen.size).toBe(2);
  });

  it('is none in a wind that base leg cannot be flown in', () => {
    const { approaching, conditions } = fromBase(1, 160, -90, 60);
    expect(closeApproach(approaching, conditions)).toBeUndefined();
  });
});
