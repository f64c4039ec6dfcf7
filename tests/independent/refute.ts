import type { Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import { planOf } from './adapter.ts';
import type { Contradiction, Kind } from './contradiction.ts';
import { Chance } from './random.ts';
import { randomObstacles, randomRequest } from './random-requests.ts';
import { equationContradictions, madeContradictions, notMadeContradictions } from './refute-flight.ts';
import { changedWithHeight, gateContradictions, outsideOwnGates } from './refute-gates.ts';
import { obstacleContradictions } from './refute-obstacles.ts';

/** What became of a case. */
export interface Outcome {
  readonly result: 'made' | 'not made' | 'refused' | 'thrown';
  /** Gates compared with the search. */
  readonly gates: number;
  readonly obstacles: number;
  readonly contradictions: readonly Contradiction[];
}

/** The case of a seed: a random request, with obstacles around the path that it gives. */
export function requestOf(seed: number): PlanRequest {
  const chance = new Chance(seed);
  const bare = randomRequest(chance);
  const plan = attempt({ ...bare, detail: 'flight' });
  if (!plan || plan instanceof Error) return bare;
  return { ...bare, runway: { ...bare.runway, obstacles: randomObstacles(chance, plan) } };
}

/** What a plan may be contradicted in. */
const checks: Readonly<
  Record<Exclude<Kind, 'thrown'>, (request: PlanRequest, plan: Plan) => Contradiction[]>
> = {
  made: madeContradictions,
  'not-made': notMadeContradictions,
  equations: equationContradictions,
  obstacle: obstacleContradictions,
  gate: gateContradictions,
  'plan-outside-gates': outsideOwnGates,
  'gate-of-height': (request, plan) => changedWithHeight(request, plan, planOf),
};

export const allKinds = Object.keys(checks) as (keyof typeof checks)[];
const ofGates: readonly Kind[] = ['gate', 'plan-outside-gates', 'gate-of-height'];

/** Plans a request and looks for what contradicts the plan, of some kinds or of all. */
export function refute(request: PlanRequest, kinds: readonly Kind[] = allKinds): Outcome {
  const detail = kinds.some((kind) => ofGates.includes(kind)) ? 'whole' : 'flight';
  const plan = attempt({ ...request, detail });
  if (plan === undefined) return { result: 'refused', gates: 0, obstacles: 0, contradictions: [] };
  if (plan instanceof Error) {
    const says = `the planner stops with: ${plan.message}`;
    const thrown: Contradiction = { kind: 'thrown', says, metres: Number.NaN, request };
    return { result: 'thrown', gates: 0, obstacles: 0, contradictions: [thrown] };
  }
  return {
    result: plan.made ? 'made' : 'not made',
    gates: plan.gates.length,
    obstacles: request.runway.obstacles.length,
    contradictions: allKinds
      .filter((kind) => kinds.includes(kind))
      .flatMap((kind) => checks[kind](request, plan)),
  };
}

/** The plan, or what the planner stopped with: it may refuse a request, and nothing else. */
function attempt(request: PlanRequest) {
  try {
    return planOf(request);
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}
