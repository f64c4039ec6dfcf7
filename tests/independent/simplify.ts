import type { PlanRequest } from '../../src/flight/terms/plan.ts';

/** Changes that make a request plainer, the one that removes most first. */
const plainer: readonly ((request: PlanRequest) => PlanRequest)[] = [
  (r) => ({ ...r, runway: { ...r.runway, obstacles: [] } }),
  (r) => ({ ...r, wind: { ...r.wind, speed: 0 }, windProfile: 'uniform', windLayers: undefined }),
  (r) => ({ ...r, windProfile: 'uniform', windLayers: undefined }),
  (r) => ({ ...r, windProfile: 'power', windLayers: undefined }),
  (r) => ({ ...r, minimums: undefined }),
  (r) => ({ ...r, temperature: undefined }),
  (r) => ({ ...r, airfield: { ...r.airfield, elevation: 0 } }),
  (r) => ({ ...r, airfield: { ...r.airfield, windExponent: 1 / 7 } }),
  (r) => ({ ...r, airfield: { ...r.airfield, windVeer: undefined } }),
  (r) => ({ ...r, mass: undefined }),
  (r) => ({ ...r, aircraft: { ...r.aircraft, mass: { reference: 400, flown: 400 } }, mass: undefined }),
  (r) => ({ ...r, bank: undefined }),
  (r) => ({ ...r, aircraft: { ...r.aircraft, steepApproach: undefined } }),
  (r) => ({
    ...r,
    runway: { ...r.runway, heading: 0 },
    wind: { ...r.wind, from: r.wind.from - r.runway.heading },
  }),
  ...[1, 2, 3].map((digits) => (r: PlanRequest) => rounded(r, digits)),
];

/** Every number to this many digits, directions kept within a circle. */
function rounded<T>(value: T, digits: number): T {
  if (typeof value === 'number') return Number(value.toPrecision(digits)) as T;
  if (Array.isArray(value)) return value.map((item) => rounded(item, digits)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, rounded(item, digits)])) as T;
}

const wholeTurn = 2 * Math.PI;

/** The plainest request found that still shows the same. */
export function simplified(request: PlanRequest, shows: (request: PlanRequest) => boolean): PlanRequest {
  return plainer.reduce((plainest, change) => {
    const changed = change(plainest);
    const from = ((changed.wind.from % wholeTurn) + wholeTurn) % wholeTurn;
    const tried = { ...changed, wind: { ...changed.wind, from } };
    return shows(tried) ? tried : plainest;
  }, request);
}
