import { describe, expect, it } from 'vitest';
import { requestFor } from '../../../tests/flight-school.ts';
import { planApproach } from '../plan/planner.ts';
import type { SinkPoint } from '../terms/aircraft-data.ts';
import { RequestError } from '../terms/errors.ts';
import { fitPolar } from './polar-fit.ts';

/** Sink of the exact polar, by iteration: sin g = cos g0/(2E) [u^2 + (cos g/cos g0)^2/u^2]. */
function sinkAt(speed: number, best: { speed: number; ratio: number }): number {
  const cosBest = Math.cos(Math.atan(1 / best.ratio));
  const u2 = (speed / best.speed) ** 2;
  let sin = 0;
  for (let i = 0; i < 200; i++) {
    sin = (cosBest / (2 * best.ratio)) * (u2 + (1 - sin * sin) / (cosBest * cosBest * u2));
  }
  return speed * sin;
}

const pointsOf = (best: { speed: number; ratio: number }, shares: readonly number[]): SinkPoint[] =>
  shares.map((share) => ({ speed: share * best.speed, sink: sinkAt(share * best.speed, best) }));

const shares = [0.8, 0.9, 1, 1.1, 1.25, 1.4, 1.6];

describe('a polar fitted to measured points', () => {
  it.each([
    { speed: 21.6, ratio: 6.4 },
    { speed: 14, ratio: 4 },
    { speed: 30.9, ratio: 8.6 },
    { speed: 27, ratio: 40 },
  ])('of a known one is that one: $ratio:1 at $speed m/s', (best) => {
    for (const some of [shares, shares.slice(1, 4), [...shares, ...shares]]) {
      const found = fitPolar(pointsOf(best, some));
      expect(Math.abs(found.speed / best.speed - 1)).toBeLessThan(1e-9);
      expect(Math.abs(found.ratio / best.ratio - 1)).toBeLessThan(1e-9);
      expect(found.residual).toBeLessThan(1e-9);
    }
  });

  it('says how badly it meets points with an error, and is still near the polar behind them', () => {
    const best = { speed: 21.6, ratio: 6.4 };
    const many = Array.from({ length: 40 }, (_, i) => 0.8 + i * 0.02);
    for (const error of [0.02, 0.1, 0.3]) {
      const found = fitPolar(
        pointsOf(best, many).map((point, i) => ({ ...point, sink: point.sink + (i % 2 ? error : -error) })),
      );
      expect(found.residual / error).toBeGreaterThan(0.9);
      expect(found.residual / error).toBeLessThan(1.1);
      expect(Math.abs(found.ratio / best.ratio - 1)).toBeLessThan(0.1 * error);
    }
  });

  it('of nearly the best sink at every speed, has its least sink where the textbook has it', () => {
    // Parabolic drag polar (computed): least sink at 3^(-1/4) of the best-glide speed, small angles.
    const found = fitPolar(pointsOf({ speed: 25, ratio: 60 }, shares));
    const sinks = Array.from({ length: 400 }, (_, i) => 0.6 + i * 0.001).map((share) => ({
      share,
      sink: sinkAt(share * found.speed, found),
    }));
    const least = sinks.reduce((a, b) => (a.sink < b.sink ? a : b));
    expect(Math.abs(least.share - 3 ** -0.25)).toBeLessThan(0.002);
  });
});

describe('points that are no polar are refused, naming them', () => {
  const good = pointsOf({ speed: 21.6, ratio: 6.4 }, [0.9, 1, 1.2]);
  const [first, second, third] = good as [SinkPoint, SinkPoint, SinkPoint];
  const cases: [string, SinkPoint[]][] = [
    ['none', []],
    ['two points', [first, second]],
    ['three points at two speeds', [first, second, second]],
    ['a climb', [first, second, { ...third, sink: -1 }]],
    ['no sink', [first, second, { ...third, sink: 0 }]],
    ['a sink as much as the speed', [first, second, { ...third, sink: third.speed }]],
    ['no speed', [first, second, { speed: 0, sink: 3 }]],
    ['not a number', [first, second, { speed: Number.NaN, sink: 3 }]],
    ['a sink that is not a number', [first, second, { ...third, sink: Number.NaN }]],
    ['a sink that only falls', [18, 24, 30].map((speed) => ({ speed, sink: 60 / speed - 1 }))],
    ['a sink that grows without end', [18, 24, 30].map((speed) => ({ speed, sink: (speed / 18) ** 5 }))],
  ];
  it.each(cases)('%s', (_words, points) => {
    let error: unknown;
    try {
      fitPolar(points);
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toBeInstanceOf(RequestError);
    expect((error as RequestError).field).toBe('points');
  });
});

describe('an aircraft with measured points', () => {
  it.each(['osier', 'withy'] as const)('%s flies as with the same polar given', (id) => {
    const request = requestFor(id);
    const idle = request.aircraft.glide.idle as { speed: number; ratio: number };
    const given = planApproach(request);
    const points = pointsOf(idle, shares);
    const measured = planApproach({
      ...request,
      aircraft: { ...request.aircraft, glide: { ...request.aircraft.glide, idle: { points } } },
    });
    expect(measured.made).toBe(true);
    // Where a leg ends on a sample, the last bits may make it two.
    expect(Math.abs(measured.track.length - given.track.length)).toBeLessThan(2);
    expect(measured.track.at(-1)!.along).toBeCloseTo(given.track.at(-1)!.along, 5);
    given.track.slice(0, 100).forEach((sample, i) => {
      expect(measured.track[i]!.along).toBeCloseTo(sample.along, 5);
      expect(measured.track[i]!.height).toBeCloseTo(sample.height, 5);
    });
    expect(measured.solved.value).toBeCloseTo(given.solved.value, 5);
    expect(measured.aircraft.glide.idle.residual).toBeLessThan(1e-9);
  });

  it('is refused with the reason: too few speeds, a sink that is no glide, points that no polar goes through', () => {
    const reason = (points: readonly SinkPoint[]) => {
      try {
        fitPolar(points, 'glide');
      } catch (error) {
        return error instanceof RequestError && [error.field, error.reason.code];
      }
      return undefined;
    };
    const sound = pointsOf({ speed: 20, ratio: 6 }, [0.9, 1, 1.2]);
    const [first, ...others] = sound as [SinkPoint, ...SinkPoint[]];
    expect(reason(sound)).toBeUndefined();
    expect(reason(sound.slice(0, 2))).toEqual(['glide', 'too-few-points']);
    expect(reason([first, first, others[0]!])).toEqual(['glide', 'too-few-points']);
    for (const wrong of [
      { speed: 0 },
      { speed: -18 },
      { sink: 0 },
      { sink: -2 },
      { sink: first.speed },
      { sink: 30 },
    ]) {
      expect(reason([{ ...first, ...wrong }, ...others]), JSON.stringify(wrong)).toEqual([
        'glide',
        'sink-is-no-glide',
      ]);
    }
    // The drag that grows with the speed would be less than nothing, or that which falls with it.
    expect(reason([15, 20, 25].map((speed) => ({ speed, sink: 0.0003 * speed ** 3 - 5 / speed })))).toEqual([
      'glide',
      'no-polar-fits',
    ]);
    expect(reason([15, 20, 25].map((speed) => ({ speed, sink: 70 / speed - 0.0001 * speed ** 3 })))).toEqual([
      'glide',
      'no-polar-fits',
    ]);
  });

  it('that are no polar is refused, naming the points', () => {
    const request = requestFor('osier');
    const aircraft = { ...request.aircraft, glide: { idle: { points: [] } } };
    expect(() => planApproach({ ...request, aircraft })).toThrow(RequestError);
  });
});
