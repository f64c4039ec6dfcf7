import type { KeyId } from '../../src/flight/terms/key.ts';
import type { Gate, Plan, PlanRequest } from '../../src/flight/terms/plan.ts';
import { type Band, bandOnFinal } from './band.ts';
import { type Contradiction, feet, foot } from './contradiction.ts';
import { FinalReach } from './final-reach.ts';
import { bandAtBaseKey, bandAtDownwindKey, type Found } from './gate-search.ts';
import { worldOf } from './world.ts';

/** m, a step of the page: how far outside an edge a path is a contradiction, and how far inside it one must be found. */
const outside = 10 * foot;
const inside = 10 * foot;
/** m: nobody is this high at a key, and winds like those drawn up there do not blow. Edges above it are not told apart. */
const topmost = 1000;

/** Edges of gates that are not edges. */
export function gateContradictions(request: PlanRequest, plan: Plan): Contradiction[] {
  if (!plan.made) return [];
  const world = worldOf(request);
  const reach = new FinalReach(world, plan.roundOut.loadFactor);
  return plan.gates.flatMap((gate) => {
    const roughly = compare(gate, searched(gate.at, 1));
    // A path that is found counts; where one is missed, it is looked for more finely.
    const missed = gate.at !== 'final' && roughly.some(({ missing }) => missing);
    const finely = missed ? compare(gate, searched(gate.at, 2)) : roughly;
    const said =
      finely.some(({ missing }) => missing) && gate.at !== 'final'
        ? compare(gate, searched(gate.at, 5))
        : finely;
    return said.map(({ says, metres }) => ({
      kind: 'gate' as const,
      says: `${gate.at}: ${says}`,
      metres,
      request,
    }));
  });

  function searched(at: KeyId, fineness: number): Band | Found | undefined {
    const key = plan.keys.find(({ id }) => id === at)!;
    if (at === 'final') return bandOnFinal(reach, -key.along);
    if (at === 'base-key') return bandAtBaseKey(world, reach, key, fineness);
    return bandAtDownwindKey(world, reach, key, Math.abs(key.across), fineness);
  }
}

interface Said {
  readonly says: string;
  readonly metres: number;
  /** True where the search has found less than the gate claims, false where it has found more. */
  readonly missing: boolean;
}

function compare({ low, high: claimedHigh }: Gate, found: Band | Found | undefined): Said[] {
  const high = claimedHigh === null ? null : Math.min(claimedHigh, topmost);
  const mine = found ? `${feet(found.low)} to ${feet(found.high)}${pathOf(found)}` : 'nowhere';
  const edges = `${edge(low)} to ${edge(claimedHigh)}, it says; made from ${mine}`;
  const claimed = low !== null && high !== null ? high - low : 0;
  if (!found) {
    return claimed < 2 * inside ? [] : [{ says: edges, metres: claimed, missing: true }];
  }
  if (low === null || high === null) {
    const width = found.high - found.low;
    const none = low === null && high === null;
    if (none && width < 2 * inside) return [];
    return [{ says: `${none ? 'no band' : 'one edge alone'}: ${edges}`, metres: width, missing: false }];
  }
  const all = [
    { says: 'low is not the lowest', metres: low - found.low, most: outside, missing: false },
    {
      says: 'high is not the highest',
      metres: Math.min(found.high, topmost) - high,
      most: outside,
      missing: false,
    },
    { says: 'low is too low', metres: found.low - low, most: inside, missing: true },
    { says: 'high is too high', metres: high - found.high, most: inside, missing: true },
  ];
  return all
    .filter(({ metres, most }) => metres > most)
    .map(({ says, ...rest }) => ({ says: `${says}: ${edges}`, ...rest }));
}

const edge = (height: number | null) => (height === null ? 'none' : feet(height));

const degrees = (angle: number) => `${((angle * 180) / Math.PI).toFixed(1)} degrees`;

function pathOf(found: Band | Found): string {
  if (!('lowAt' in found)) return '';
  const path = (at: readonly number[]) =>
    at.length > 1
      ? `${at[0]!.toFixed(0)} m past, ${degrees(at[1]!)}`
      : Math.abs(at[0]!) > Math.PI
        ? `one turn ${at[0]!.toFixed(0)} m past`
        : degrees(at[0]!);
  return ` (low by ${path(found.lowAt)}; high by ${path(found.highAt)})`;
}

/** A sound plan that is outside its own gates. */
export function outsideOwnGates(request: PlanRequest, plan: Plan): Contradiction[] {
  const { leastFinal } = worldOf(request);
  const key = (id: KeyId) => plan.keys.find((each) => each.id === id);
  const [final, turn, downwind] = [key('final'), key('base-turn'), key('downwind-key')];
  if (!plan.made || plan.approach !== '180' || !final || !turn || !downwind) return [];
  if (final.height < leastFinal || downwind.along - turn.along > 2 * Math.abs(downwind.across)) return [];
  return plan.gates.flatMap(({ at, low, high, plan: height }) => {
    const by = Math.max((low ?? height) - height, height - (high ?? height));
    if (by <= outside) return [];
    const says = `${at}: planned at ${feet(height)}, its own gate ${edge(low)} to ${edge(high)}`;
    return [{ kind: 'plan-outside-gates' as const, says, metres: by, request }];
  });
}

/** The gate of the downwind key of a 180, whose place is the same from any height: it must be the same as well. */
export function changedWithHeight(
  request: PlanRequest,
  plan: Plan,
  planOf: (request: PlanRequest) => Plan | undefined,
) {
  const gateOf = (of: Plan | undefined) =>
    of?.made ? of.gates.find(({ at }) => at === 'downwind-key') : undefined;
  const own = gateOf(plan);
  if (plan.approach !== '180' || !own) return [];
  const others = [0.9, 1.1, 1.25].map((share) => plan.flown.keyHeight * share);
  return others.flatMap((height): Contradiction[] => {
    const other = gateOf(planOf({ ...request, height }));
    if (!other) return [];
    const apart = (a: number | null, b: number | null) => (a === b ? 0 : Math.abs((a ?? 1e6) - (b ?? 1e6)));
    const by = Math.max(apart(own.low, other.low), apart(own.high, other.high));
    if (by <= foot) return [];
    const band = ({ low, high }: Gate) => `${edge(low)} to ${edge(high)}`;
    const says = `downwind-key: ${band(own)} of a plan from ${feet(own.plan)}, ${band(other)} of one from ${feet(height)}`;
    return [{ kind: 'gate-of-height', says, metres: by, request }];
  });
}
