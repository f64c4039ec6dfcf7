import type { PlanRequest } from '../../terms/plan.ts';
import type { FaultMethod } from '../fault-method.ts';
import { planForFaults } from '../fault-plan.ts';
import { afterCount, downwindSeconds } from '../parts.ts';

export const baseTurnAsInStillAir: FaultMethod<'base-turn-as-in-still-air'> = {
  madeOn: 'base',
  make: (parts, _, { request }) => afterCount(parts, downwindSeconds(planForFaults(inStillAir(request)))),
};

function inStillAir(request: PlanRequest): PlanRequest {
  return {
    ...request,
    wind: { from: request.wind.from, speed: 0 },
    gust: undefined,
    windProfile: undefined,
    windLayers: undefined,
  };
}
