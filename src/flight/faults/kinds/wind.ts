import { resolveRequest } from '../../plan/request.ts';
import { type Amount, changed } from '../../terms/fault.ts';
import type { PlanRequest } from '../../terms/plan.ts';
import type { FaultMethod } from '../fault-method.ts';
import { CannotFly } from '../parts.ts';

export const wind: FaultMethod<'wind'> = {
  madeOn: 'downwind',
  make: (parts, { amount }, { request }) => ({
    ...parts,
    resolved: resolveRequest(windier(request, amount)),
  }),
};

/** The wind of a calm day would be on the nose of final. */
function windier(request: PlanRequest, amount: Amount): PlanRequest {
  const { from, speed } = request.wind;
  const now = changed(speed, amount);
  if (now < 0) throw new CannotFly('too-little-wind');
  const share: Amount = 'to' in amount ? (speed > 0 ? { factor: now / speed } : { by: now }) : amount;
  return {
    ...request,
    wind: { from: speed > 0 ? from : request.runway.heading, speed: now },
    gust: request.gust === undefined ? undefined : Math.max(request.gust, now),
    windLayers: request.windLayers?.map((layer) => ({
      ...layer,
      speed: Math.max(0, changed(layer.speed, share)),
    })),
  };
}
