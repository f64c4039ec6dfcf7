import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { metresPerSecondPerKnot } from '../../units/factors.ts';
import type { FaultChange, FaultFlown } from '../fault.ts';
import { between } from '../keys.ts';
import type { TrackSample } from '../plan.ts';
import { type FaultPlan, planForFaults } from './changed-approach.ts';
import { flyFault } from './fly-fault.ts';
import { recoverFault, spareAfter } from './recover-fault.ts';

const kt = metresPerSecondPerKnot;

function flownWith(plan: FaultPlan, change: FaultChange): FaultFlown {
  const flight = flyFault(plan, change);
  if (!flight.flown) throw new Error(flight.reason);
  return flight;
}

/** The point of a track at a height, looked for from the end. */
function atHeight(track: readonly TrackSample[], height: number): TrackSample {
  const next = track.findIndex((sample) => sample.height <= height);
  const [a, b] = [track[next - 1]!, track[next]!];
  return {
    ...between(a, b, (a.height - height) / (a.height - b.height)),
    heading: b.heading,
    phase: b.phase,
  };
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
];

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
  it('is found for the base turn flown late: the corner cut above it', () => {
    const plan = planForFaults(requestFor('osier', { wind: windOffRunway(-28, 12) }));
    const [cut] = recoverFault(plan, flownWith(plan, { kind: 'base-turn', seconds: 6 }));
    expect(cut).toMatchObject({ by: 'cut-corner', makes: true, phase: 'downwind' });
  });
  it('is nowhere for a landing: that has its own figures', () => {
    const plan = planForFaults(requestFor('osier'));
    expect(recoverFault(plan, flownWith(plan, { kind: 'round-out-height', amount: { factor: 2 } }))).toEqual(
      [],
    );
  });
});
