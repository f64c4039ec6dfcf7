import { describe, expect, it } from 'vitest';
import { requestFor, windOffRunway } from '../../../tests/flight-school.ts';
import { metresPerSecondPerKnot } from '../../units/factors.ts';
import type { Amount } from '../terms/fault.ts';
import type { PlanRequest } from '../terms/plan.ts';
import { planForFaults } from './fault-plan.ts';
import { flyFault } from './fly-fault.ts';

const kt = metresPerSecondPerKnot;
const surface = windOffRunway(-20, 10);

function endIn(changes: Partial<PlanRequest>, amount: Amount) {
  const flight = flyFault(planForFaults(requestFor('osier', { wind: surface, ...changes })), {
    kind: 'wind',
    amount,
  });
  if (!flight.flown) throw new Error(String(flight.reason));
  return flight.end;
}

describe('another wind, on a day whose wind is given by height', () => {
  const alike = {
    windProfile: 'layers',
    windLayers: [10, 300].map((height) => ({ height, ...surface })),
  } as const;
  const stronger = {
    windProfile: 'layers',
    windLayers: [
      { height: 10, ...surface },
      { height: 300, ...surface, speed: 16 * kt },
    ],
  } as const;

  it.each<Amount>([{ by: 4 * kt }, { by: -4 * kt }, { factor: 1.4 }, { to: 6 * kt }])(
    'is another at every height: %j',
    (amount) => {
      const layered = endIn(alike, amount);
      const uniform = endIn({ windProfile: 'uniform' }, amount);
      expect(Math.abs(uniform.along)).toBeGreaterThan(20);
      expect(layered.along).toBeCloseTo(uniform.along, 3);
      expect(layered.across).toBeCloseTo(uniform.across, 3);
    },
  );

  it('put in the place of the surface wind changes the winds above it by the same share', () => {
    const half = endIn(stronger, { factor: 0.5 });
    expect(half.along).toBeGreaterThan(20);
    expect(endIn(stronger, { to: 5 * kt }).along).toBeCloseTo(half.along, 6);
  });

  it('never blows the other way because more is taken off than a height has', () => {
    const light = {
      ...stronger,
      windLayers: [{ height: 10, ...surface, speed: 2 * kt }, stronger.windLayers[1]],
    };
    const none = {
      ...light,
      windLayers: [{ height: 10, ...surface, speed: 5 * kt }, stronger.windLayers[1]],
    };
    // 5 kt off: of 2 kt as of 5 kt nothing is left.
    const flown = (layers: typeof light) => {
      const plan = planForFaults(requestFor('osier', { wind: surface, ...layers }));
      const flight = flyFault(plan, { kind: 'wind', amount: { by: -5 * kt } });
      return flight.flown && flight.track.at(-1)!.groundspeed;
    };
    expect(flown(light)).toBeCloseTo(flown(none) as number, 1);
  });
});
