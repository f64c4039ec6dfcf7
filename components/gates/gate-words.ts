import { soundFinal } from '../../src/flight/gates.ts';
import type { Gate, KeyId, Plan } from '../../src/flight/plan.ts';
import { metresPerFoot } from '../../src/units/factors.ts';
import { formatHeight } from '../../src/units/format.ts';
import type { PageUnits } from '../../src/units/page-units.ts';
import { asNear, isPlanEdge } from '../safe-rounding.ts';

// What the edges of a gate mean is how the core finds them: by the shortest sound path and by the longest.

/** What it takes below the band; what is missing where no height is its lower edge. */
export function belowWords({ at, low }: Gate, { power }: Plan, units: PageUnits): string {
  const instead = power === 'idle' ? 'Power, or another field' : 'Another field, at once';
  if (low !== null) return `${instead}: ${fallsShort(at, units)}.`;
  const why =
    at === 'final'
      ? 'the wind does not let it be reached'
      : `the turn to final is complete only below ${formatHeight(soundFinal, units)}, or the wind does not let it be flown`;
  return `No sound path from here: ${why}. Treat any height below the plan as too low. ${instead}.`;
}

/** Lower than this, a spot may be reached by a turn that is not sound: that is no reason to try. */
function fallsShort(at: KeyId, units: PageUnits): string {
  if (at === 'final') return 'even the best speed into this wind does not reach the spot';
  const shortest = at === 'base-key' ? 'the corner cut straight for the spot' : 'the base turn at once';
  return `even ${shortest} does not reach it with the turn to final complete by ${formatHeight(soundFinal, units)}`;
}

/** What it takes in the band, and whether the plan itself is in it. */
export function withinWords(gate: Gate, plan: Plan, units: PageUnits): string {
  const { at, low, high, plan: planned } = gate;
  if (low !== null && high !== null && low > high + asNear) {
    return 'No height is sound here: what is high enough for a sound turn to final is too high for the spot.';
  }
  const { lower, higher } = remedies(at, plan);
  if (low !== null && planned < low - asNear) {
    // Its turn to final is too low: from a sound one the way is longer than the plan's, never shorter.
    return `The plan itself is below the band, and too low. In the band: ${higher}.`;
  }
  const above = isAtPlan(gate, 'high', units)
    ? 'There is nothing in hand above it either.'
    : `Higher: ${higher}.`;
  if (low === null) return `Fly the plan; no lower height was found sound. ${above}`;
  // The lowest height is the plan, or so near to it that there is no lower one in the band to say a word about.
  if (isAtPlan(gate, 'low', units)) {
    return `Fly the plan; there is next to nothing in hand below it: treat any lower height as too low. ${above}`;
  }
  return `At the plan, fly the plan. Lower: ${lower}. ${above}`;
}

/** Whether an edge is printed as the plan, or no farther from it than a step of the page. */
function isAtPlan(gate: Gate, edge: 'low' | 'high', units: PageUnits): boolean {
  const value = gate[edge];
  if (value === null) return false;
  const inHand = edge === 'low' ? gate.plan - value : value - gate.plan;
  return isPlanEdge(gate, edge, units) || inHand < oneStep[units.height];
}

/** m, of the heights on the page. */
const oneStep = { ft: 10 * metresPerFoot, m: 5 } as const;

function remedies(at: KeyId, { aircraft }: Plan): { readonly lower: string; readonly higher: string } {
  const drag = aircraft.steepApproach ? 'the steep approach' : 'an S-turn';
  if (at === 'downwind-key') {
    return { lower: 'turn base sooner, cut the corner', higher: 'move the base turn out, widen base' };
  }
  if (at === 'base-key') return { lower: 'turn in, cut the corner', higher: `widen, then ${drag}` };
  return { lower: 'the best-glide speed, and no slower', higher: drag };
}

/** What it takes above the band. */
export function aboveWords({ high }: Gate, { power }: Plan): string {
  const instead =
    power === 'idle' ? 'Go around; with no engine, land farther in' : 'Land farther in, or another field';
  if (high !== null) return `${instead}: no way of losing height brings it to the spot.`;
  return `No longer way was found that comes back to the spot. Treat any height above the plan as too high. ${instead}.`;
}
