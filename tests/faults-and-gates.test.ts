import { describe, expect, it } from 'vitest';
import { contextOf, degrees, flyTrial, knots } from '../components/trial-packet.ts';
import { standardGravity } from '../src/flight/air/constants.ts';
import { changedApproach } from '../src/flight/faults/changed-approach.ts';
import { type FaultPlan, planForFaults } from '../src/flight/faults/fault-plan.ts';
import { flyFault } from '../src/flight/faults/fly-fault.ts';
import { isInTheLanding } from '../src/flight/faults/list.ts';
import { recoverFault } from '../src/flight/faults/recover-fault.ts';
import { gatesOf } from '../src/flight/plan/gates.ts';
import type { FaultChange, FaultFlown } from '../src/flight/terms/fault.ts';
import type { KeyId } from '../src/flight/terms/key.ts';
import type { KeyPosition } from '../src/flight/terms/plan.ts';

// The fault table and the gate rows of a packet say the same about a flight: within the band of a key that it comes
// to, some way makes the spot from there; outside it, none does. `recoverFault` says which places are compared.

const { request: usual, school } = contextOf(flyTrial());
const rows = [...school.faults.values()]
  .flatMap(({ faults }) => faults)
  .flatMap(({ id, fly }) => (fly && !isInTheLanding(fly.change) ? [{ id, change: fly.change }] : []));
const winds = [
  { from: degrees(210), speed: knots(12) },
  { from: 0, speed: 0 },
  { from: degrees(150), speed: knots(8) },
];
const cases = [...school.fleet].flatMap(([id, aircraft]) => winds.map((wind) => ({ id, aircraft, wind })));

const order: readonly KeyId[] = ['downwind-key', 'base-key', 'final'];
/** m: nothing is compared nearer to an edge than this. */
const edge = 1;

/** The keys that a fault is compared at: those from where it is made onwards. */
function compared({ kind }: FaultChange, { keys }: FaultFlown, plan: FaultPlan): KeyPosition[] {
  const from = kind.startsWith('final') ? 2 : kind.startsWith('base') ? 1 : 0;
  const planned = plan.pattern.keys.find(({ id }) => id === 'downwind-key')!;
  return keys.filter(({ id, across }) => {
    if (order.indexOf(id) < from) return false;
    if (id === 'downwind-key') return Math.abs(across - planned.across) < 1;
    return id !== 'final' || Math.abs(across) < 1;
  });
}

describe.each(cases)('faults of the school and gates: $id, $wind.from', ({ aircraft, wind }) => {
  const plan = planForFaults({ ...usual, aircraft, wind });

  it('say the same', () => {
    let places = 0;
    for (const { id, change } of rows) {
      const fault = flyFault(plan, change);
      const changed = changedApproach(plan, change);
      if (!fault.flown || 'refused' in changed || Math.abs(fault.end.along) < 5) continue;
      const { conditions } = changed.resolved;
      const ways = recoverFault(plan, fault);
      const keys = compared(change, fault, plan);
      for (const { at, low, high } of gatesOf(keys, plan.asked, conditions)) {
        const key = keys.find((each) => each.id === at)!;
        const { eas } = fault.track.reduce((a, b) =>
          Math.abs(b.time - key.time) < Math.abs(a.time - key.time) ? b : a,
        );
        const factor = conditions.tasOverEas(key.height);
        const worth = ((eas ** 2 - conditions.polar.speed ** 2) * factor ** 2) / (2 * standardGravity);
        const height = key.height + worth;
        const from = ways.filter((way) => way.makes && way.by !== 'line-up' && way.time >= key.time - 0.1);
        const about = `${id}, ${at}: ${height} in ${low} to ${high}, ${ways.map(({ by }) => by).join(' ')}`;
        if (low === null || high === null) {
          expect(from, about).toEqual([]);
          continue;
        }
        if (Math.min(Math.abs(height - low), Math.abs(height - high)) < edge) continue;
        places++;
        expect(from.length > 0, about).toBe(height > low && height < high);
      }
    }
    expect(places).toBeGreaterThan(10);
  });
});
