import { describe, expect, it } from 'vitest';
import { aircraftIds, requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { Flight } from '../flying/fly.ts';
import { ALONG, EAS } from '../flying/motions.ts';
import { pullFrom } from '../flying/round-out-pull.ts';
import { normalFrom, randomFrom } from '../numerics/random.ts';
import { workOut } from '../plan/planner.ts';
import { RequestError } from '../terms/errors.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { asPlanned, monteCarlo, type SensitivityRow, sensitivity, usualSpread } from './sensitivity.ts';

const along = (rows: readonly SensitivityRow[], name: string) => rows.find((row) => row.name === name)!.along;

describe.each(aircraftIds)('what one change does to the half circuit of %s', (id) => {
  const rows = sensitivity(requestFor(id, { wind: windOffRunway(0, 8) }));

  it('each row names a change, lands somewhere, and is one change alone', () => {
    expect(new Set(rows.map(({ name }) => name)).size).toBe(rows.length);
    for (const { change, along, across } of rows) {
      expect(Object.keys(change)).toHaveLength(1);
      expect(Number.isFinite(along) && Number.isFinite(across)).toBe(true);
    }
  });

  it('a poorer glide, more wind ahead, a wider leg or a late turn ends short', () => {
    for (const name of ['less-glide-ratio', 'more-headwind', 'wider', 'late']) {
      expect(along(rows, name), name).toBeLessThan(-5);
    }
  });

  it('a better glide, less wind ahead or a closer leg ends long', () => {
    for (const name of ['more-glide-ratio', 'less-headwind', 'closer']) {
      expect(along(rows, name), name).toBeGreaterThan(5);
    }
  });

  it('100 m wider ends about 100 m short, for base leg is that much longer', () => {
    expect(along(rows, 'wider')).toBeGreaterThan(-160);
    expect(along(rows, 'wider')).toBeLessThan(-60);
  });

  it('3 s late in no wind ends short by twice the way of 3 s, out and back', () => {
    const calm = requestFor(id);
    const late = along(sensitivity(calm), 'late');
    const { glideSpeed } = { glideSpeed: (calm.aircraft.glide.idle as { speed: number }).speed };
    expect(late).toBeLessThan(-2 * 3 * glideSpeed * 0.85);
    expect(late).toBeGreaterThan(-2 * 3 * glideSpeed * 1.15);
  });

  it('a tenth less glide ratio in no wind costs a tenth of the way flown, less turns and round-out', () => {
    const calm = requestFor(id);
    const height = calm.airfield.pattern.height;
    const { ratio } = calm.aircraft.glide.idle as { ratio: number };
    const short = -along(sensitivity(calm), 'less-glide-ratio') / (height * ratio);
    expect(short).toBeGreaterThan(0.06);
    expect(short).toBeLessThan(0.115);
  });
});

describe('what one change does', () => {
  it('is mirrored on the other hand, wind from the left for wind from the right', () => {
    const left = sensitivity(requestFor('osier', { circuit: 'left', wind: windOffRunway(0, 6) }));
    const right = sensitivity(requestFor('osier', { circuit: 'right', wind: windOffRunway(0, 6) }));
    const other: Record<string, string> = {
      'more-wind-from-the-right': 'more-wind-from-the-left',
      'more-wind-from-the-left': 'more-wind-from-the-right',
    };
    for (const row of left) {
      expect(along(right, other[row.name] ?? row.name), row.name).toBeCloseTo(row.along, 3);
    }
  });

  it('is refused for a request that cannot be flown', () => {
    expect(() => sensitivity(requestFor('osier', { height: 3 }))).toThrow(RequestError);
    expect(() => monteCarlo(requestFor('osier', { height: 3 }), 5, 1)).toThrow(RequestError);
  });
});

describe('what one change does to another approach', () => {
  it.each(['90', '180', 'spiral'] as const)('is something, in every row: the %s', (approach) => {
    for (const { name, along } of sensitivity(requestFor('osier', { approach, wind: windOffRunway(0, 8) }))) {
      expect(Math.abs(along), name).toBeGreaterThan(0.5);
    }
  });

  it('is something, in every row: the 360', () => {
    for (const { name, along } of sensitivity(
      requestFor('osier', { approach: '360', wind: windOffRunway(0, 8) }),
    )) {
      expect(Math.abs(along), name).toBeGreaterThan(0.5);
    }
  });
});

describe('many flights with every departure at random', () => {
  const request = requestFor('osier', { wind: windOffRunway(20, 8) });

  it.each(['90', '180', '360', 'spiral'] as const)(
    'all land on the spot where nothing departs: the %s',
    (approach) => {
      const { landed, mean, deviation, withinStandard } = monteCarlo(
        { ...request, approach },
        20,
        3,
        asPlanned,
      );
      for (const end of landed) {
        expect(Math.abs(end.along)).toBeLessThan(0.1);
        expect(Math.abs(end.across)).toBeLessThan(0.1);
      }
      expect(Math.abs(mean)).toBeLessThan(0.1);
      expect(deviation).toBeLessThan(0.01);
      expect(withinStandard).toBeGreaterThanOrEqual(0);
    },
  );

  it('are the same for the same seed, and others for another', () => {
    expect(monteCarlo(request, 40, 11)).toEqual(monteCarlo(request, 40, 11));
    expect(monteCarlo(request, 40, 11).landed).not.toEqual(monteCarlo(request, 40, 12).landed);
    expect(monteCarlo(request, 60, 11).landed.slice(0, 40)).toEqual(monteCarlo(request, 40, 11).landed);
  });

  it('have the mean, deviation and share that their touchdowns have', () => {
    const { landed, mean, deviation, withinStandard } = monteCarlo(request, 300, 5);
    const places = landed.map((end) => end.along);
    expect(places).toHaveLength(300);
    const own = places.reduce((sum, x) => sum + x, 0) / 300;
    const variance = places.reduce((sum, x) => sum + (x - own) ** 2, 0) / 300;
    expect(mean).toBeCloseTo(own, 6);
    expect(deviation).toBeCloseTo(Math.sqrt(variance), 6);
    // 200 ft beyond the spot and none short: FAA-S-ACS-7A, power-off 180 (from memory).
    const within = places.filter((x) => x >= 0 && x <= 60.96).length;
    expect(withinStandard).toBeCloseTo(within / 300, 12);
    expect(withinStandard).toBeGreaterThan(0);
    expect(withinStandard).toBeLessThan(1);
  });

  it('scatter half as wide where everything departs half as much', () => {
    const half = Object.fromEntries(
      Object.entries(usualSpread).map(([name, value]) => [name, value / 2]),
    ) as unknown as typeof usualSpread;
    const [whole, halved] = [monteCarlo(request, 300, 9), monteCarlo(request, 300, 9, half)];
    expect(halved.deviation / whole.deviation).toBeGreaterThan(0.4);
    expect(halved.deviation / whole.deviation).toBeLessThan(0.6);
  });

  it('of one departure alone scatter as the table says that one does', () => {
    const calm = requestFor('osier');
    const spacing = monteCarlo(calm, 400, 21, { ...asPlanned, spacing: 20 });
    const slope = -along(sensitivity(calm), 'wider') / 100;
    expect(Math.abs(spacing.deviation / (20 * slope) - 1)).toBeLessThan(0.15);
    expect(Math.abs(spacing.mean)).toBeLessThan((4 * spacing.deviation) / 20);
  });

  it('pull as hard as each needs to come level in time: no harder, and not as planned', () => {
    const calm = requestFor('osier');
    const share = 0.15;
    const { landed } = monteCarlo(calm, 12, 4, { ...asPlanned, glideRatio: share });
    // Each flight draws a number for each departure, the glide ratio first.
    const normal = normalFrom(randomFrom(4));
    const ratios = landed.map(() => [1, 2, 3, 4, 5, 6].map(() => normal())[0]! * share);
    const struck = ratios.filter((ratio, i) => {
      expect(landed[i]!.along).toBeCloseTo(flownWith(calm, ratio, 'as needed').along, 6);
      return flownWith(calm, ratio, 'as needed').heldOff && !flownWith(calm, ratio, 'as planned').heldOff;
    });
    // A much steeper path does not come level with the planned pull: it strikes the ground, and there is no hold-off.
    expect(struck.length).toBeGreaterThan(1);
    for (const ratio of struck) {
      const holdOff = flownWith(calm, ratio, 'as needed').along - flownWith(calm, ratio, 'as planned').along;
      expect(holdOff).toBeGreaterThan(20);
    }
  });
});

/** The planned approach with another glide ratio, its round-out pulled as planned or as hard as the path needs. */
function flownWith(request: PlanRequest, ratio: number, pull: 'as planned' | 'as needed') {
  const { solution, resolved } = workOut(request);
  const { polar } = resolved.conditions;
  const conditions = { ...resolved.conditions, polar: { ...polar, ratio: polar.ratio * (1 + ratio) } };
  const { start, legs } = solution!.closed.procedure;
  const flight = new Flight(conditions, 0, 'honest');
  flight.begin(start, legs[0]!);
  for (const leg of legs) {
    const own = leg.kind === 'landing' && pull === 'as needed';
    flight.leg(own ? { ...leg, pull: pullFrom(flight.state, conditions) } : leg);
  }
  // A strike is at the speed of the glide; what comes out of the hold-off is at that of a touchdown.
  const heldOff = flight.state[EAS]! < conditions.speeds.touchdown + 0.01;
  return { along: flight.state[ALONG]!, heldOff };
}
