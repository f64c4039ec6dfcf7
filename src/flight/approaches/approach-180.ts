import type { Conditions } from '../flying/conditions.ts';
import { headwindAt } from '../flying/headwind-at.ts';
import { type ClosedApproach, closeApproach, type OpenApproach } from '../flying/open-approach.ts';
import { baseTurn, downwindLeg, finalLegs, finalTurn, joinFromBase } from '../flying/pattern-legs.ts';
import type { Leg, Start } from '../flying/procedure.ts';
import { seekRoot, type Whereabouts } from '../numerics/root.ts';
import type { ApproachMethod, ApproachTask, Solution } from './approach-method.ts';
import { spotTolerance } from './approach-method.ts';

/**
 * The half-circuit approach: the throttle closes abeam the spot on the downwind leg, and the base turn starts some
 * way past abeam; that distance is what is found (FAA-H-8083-3, chapter 9, 180-degree power-off approach).
 */
export const approach180: ApproachMethod = {
  id: '180',
  startsAt: 'downwind-key',
  usualStart: 'pattern',
  finds: ['past-abeam'],
  hasOwnSpacing: true,
  options: {},
  solve: (asked, conditions) => solveFrom(abeam(asked, conditions), asked, conditions),
};

/** What is flown before the downwind key. */
export interface Lead {
  readonly start: Start;
  readonly before: readonly Leg[];
}

/** m. Nobody flies farther past abeam than this. */
const furthestPastAbeam = 30_000;

/** At the downwind key, with nothing flown before it. */
export function abeam({ side, spacing, keyHeight }: ApproachTask, conditions: Conditions): Lead {
  return {
    start: { along: 0, across: side * spacing, height: keyHeight, eas: conditions.polar.speed },
    before: [],
  };
}

/**
 * Finds how far past abeam the base turn starts. Two turns with a base leg between them or, where the spacing leaves
 * no room for a base leg, one continuous turn at the bank that fits.
 */
export function solveFrom(lead: Lead, asked: ApproachTask, conditions: Conditions): Solution | undefined {
  let nearest: Solution | undefined;
  for (const turns of ['two', 'one'] as const) {
    const found = solveWith(turns, lead, asked, conditions);
    if (found?.made) return found;
    if (found && (!nearest || nearer(found.closed, nearest.closed))) nearest = found;
  }
  return nearest;
}

/**
 * What the glide has left over the spacing is flown out with the wind behind and back into it: a metre farther out
 * costs the time to fly it, and what final covers in that time.
 */
function likelyPastAbeam({ keyHeight, spacing }: ApproachTask, conditions: Conditions): Whereabouts {
  const speed = conditions.polar.speed * conditions.tasOverEas(keyHeight / 2);
  const headwind = headwindAt(conditions, keyHeight / 2);
  const [out, back] = [Math.max(1, speed + headwind), Math.max(1, speed - headwind)];
  const seconds = (keyHeight * conditions.polar.ratio - spacing) / speed;
  return { guess: seconds / (1 / out + 1 / back), slope: -1 - back / out, within: [0, furthestPastAbeam] };
}

/** A sound flight shows more than one that only ends nearer. */
function nearer(a: ClosedApproach, b: ClosedApproach): boolean {
  return a.sound === b.sound ? Math.abs(a.miss) < Math.abs(b.miss) : a.sound;
}

export type Turns = 'two' | 'one';

/** The pattern of a 180: what comes before it, its turns, and how far past abeam, m, the first of them starts. */
export interface HalfCircuit {
  readonly lead: Lead;
  readonly turns: Turns;
  readonly pastAbeam: number;
}

function solveWith(
  turns: Turns,
  lead: Lead,
  asked: ApproachTask,
  conditions: Conditions,
): Solution | undefined {
  let last: ClosedApproach | undefined;
  const miss = (pastAbeam: number): number => {
    last = closeApproach(
      approaching180({ lead, turns, pastAbeam }, asked, conditions),
      conditions,
      last?.joinValues,
    );
    return last ? last.miss - (asked.touchdown ?? 0) : Number.NaN;
  };
  const sought = seekRoot(miss, likelyPastAbeam(asked, conditions), spotTolerance);
  if (!sought || !last) return undefined;
  return {
    closed: last,
    solved: { name: 'past-abeam', value: sought.x, unit: 'm' },
    made: sought.found && last.sound,
  };
}

/** A 180 whose base turn starts `pastAbeam` m past abeam, with its join still open. */
export function approaching180(
  { lead: { start, before }, turns, pastAbeam }: HalfCircuit,
  asked: ApproachTask,
  conditions: Conditions,
): OpenApproach {
  const { side, bank, pull } = asked;
  const downwind = downwindLeg(side, pastAbeam, conditions);
  const after = finalLegs(conditions, pull);
  if (turns === 'one') {
    return {
      start,
      stages: [
        {
          before: [...before, downwind],
          join: {
            legs: (oneBank) => [baseTurn(side, oneBank, false), finalTurn(side, oneBank)],
            guess: bank,
            slope: side,
            within: [shallowestTurn, conditions.aircraft.turns.limit],
          },
        },
      ],
      after,
    };
  }
  return {
    start,
    stages: [
      {
        before: [...before, downwind, baseTurn(side, bank)],
        join: joinFromBase(side, bank, conditions),
      },
    ],
    after,
  };
}

/** rad. No pattern is flown in a single turn shallower than this. */
const shallowestTurn = (5 * Math.PI) / 180;
