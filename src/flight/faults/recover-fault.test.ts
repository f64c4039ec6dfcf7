import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { metresPerSecondPerKnot, radiansPerDegree } from '../../units/factors.ts';
import type { FaultChange, FaultFlown, RecoveryWay } from '../fault.ts';
import { soundFinal } from '../final-band.ts';
import type { TrackSample } from '../plan.ts';
import { type FaultPlan, planForFaults } from './changed-approach.ts';
import { flyFault } from './fly-fault.ts';
import { part } from './last-point.ts';
import { recoveredFrom, recoverFault, spareAfter } from './recover-fault.ts';

const kt = metresPerSecondPerKnot;
const deg = radiansPerDegree;

function flownWith(plan: FaultPlan, change: FaultChange): FaultFlown {
  const flight = flyFault(plan, change);
  if (!flight.flown) throw new Error(flight.reason);
  return flight;
}

/** The point of a track at a height, looked for from the end. */
function atHeight(track: readonly TrackSample[], height: number): TrackSample {
  const next = track.findIndex((sample) => sample.height <= height);
  const [a, b] = [track[next - 1]!, track[next]!];
  return { ...part(a, b, (a.height - height) / (a.height - b.height)), phase: b.phase };
}

const changes: FaultChange[] = [
  { kind: 'spacing', amount: { factor: 1.4 } },
  { kind: 'spacing', amount: { factor: 0.6 } },
  { kind: 'base-turn', seconds: 6 },
  { kind: 'base-turn', seconds: -4 },
  { kind: 'wind', amount: { by: 5 * kt } },
  { kind: 'power-stopped' },
  { kind: 'throttle', seconds: 5 },
  { kind: 'glide-speed', factor: 1.2 },
  { kind: 'start-speed', amount: { by: 12 * kt } },
  { kind: 'final-height', by: 15 },
  { kind: 'final-turn-bank', amount: { by: -12 * deg } },
  { kind: 'final-turn-bank', amount: { by: 10 * deg } },
];

/** When a way first fails, every second of the flight looked at: the pair of times between which it does. */
function failsBetween(by: RecoveryWay, plan: FaultPlan, fault: FaultFlown): [number, number] | undefined {
  const spare = spareAfter(by, plan, fault.change)!;
  const points = recoveredFrom(by, fault);
  let good = Number.NEGATIVE_INFINITY;
  for (const point of points) {
    if (point.time < good + 1 && point !== points.at(-1)) continue;
    if (!(spare(point) >= 0)) return [good, point.time];
    good = point.time;
  }
  return undefined;
}

describe('the last height of a recovery', () => {
  for (const id of ['osier', 'withy'] as const) {
    const plan = planForFaults(requestFor(id, { wind: windOffRunway(-28, 10) }));
    it.each(changes)(`makes the spot a metre higher and not a metre lower: ${id}, $kind`, (change) => {
      const fault = flownWith(plan, change);
      const ways = recoverFault(plan, fault);
      for (const way of ways) {
        if (!way.makes || way.lasts) continue;
        const spare = spareAfter(way.by, plan, change)!;
        expect(
          spare(atHeight(fault.track, way.height + 1)),
          `${way.by} a metre higher`,
        ).toBeGreaterThanOrEqual(0);
        expect(spare(atHeight(fault.track, way.height - 1)), `${way.by} a metre lower`).toBeLessThan(0);
      }
    });
  }
  for (const id of ['osier', 'withy'] as const) {
    it.each([
      [0, 0],
      [-28, 10],
      [50, 12],
    ])(`is where looking at every second finds it: ${id}, %d degrees off the nose at %d kt`, (off, knots) => {
      const plan = planForFaults(requestFor(id, { wind: windOffRunway(off, knots) }));
      for (const change of changes) {
        const fault = flownWith(plan, change);
        for (const way of recoverFault(plan, fault)) {
          if (!way.makes && !spareAfter(way.by, plan, change)) continue;
          const [good, bad] = failsBetween(way.by, plan, fault) ?? [];
          const about = `${change.kind}, ${way.by}`;
          expect(way.makes, about).toBe(
            good !== Number.NEGATIVE_INFINITY && recoveredFrom(way.by, fault).length > 0,
          );
          if (!way.makes) continue;
          expect(way.lasts, about).toBe(good === undefined);
          if (good === undefined || bad === undefined) continue;
          expect(way.time, about).toBeGreaterThanOrEqual(good);
          expect(way.time, about).toBeLessThanOrEqual(bad);
        }
      }
    });
  }
  it('is found for the base turn flown late: the corner cut above it', () => {
    const plan = planForFaults(requestFor('osier', { wind: windOffRunway(-28, 12) }));
    const [cut] = recoverFault(plan, flownWith(plan, { kind: 'base-turn', seconds: 6 }));
    expect(cut).toMatchObject({ by: 'cut-corner', makes: true, phase: 'downwind' });
  });
  it('is one way alone for another bank in the turn to final: back to the centreline, from above 300 ft', () => {
    const plan = planForFaults(requestFor('osier', { wind: windOffRunway(-28, 12) }));
    for (const by of [-12, 10]) {
      const [back, ...more] = recoverFault(
        plan,
        flownWith(plan, { kind: 'final-turn-bank', amount: { by: by * deg } }),
      );
      expect(more).toEqual([]);
      expect(back).toMatchObject({ by: 'line-up', makes: true, lasts: false });
      expect(back?.makes && back.height).toBeGreaterThan(soundFinal);
    }
  });
  it('is nowhere for a landing: that has its own figures', () => {
    const plan = planForFaults(requestFor('osier'));
    expect(recoverFault(plan, flownWith(plan, { kind: 'round-out-height', amount: { factor: 2 } }))).toEqual(
      [],
    );
  });
});
