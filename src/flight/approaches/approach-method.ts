import { metresPerFoot } from '../../units/factors.ts';
import type { Conditions } from '../flying/conditions.ts';
import type { ClosedApproach } from '../flying/open-approach.ts';
import type { Side } from '../flying/procedure.ts';
import type { Approach, ApproachOptions, HeightOption, SolvedName } from '../terms/approach.ts';
import type { KeyId } from '../terms/key.ts';
import type { Solved } from '../terms/plan.ts';
import type { Rule } from '../terms/rules.ts';

/** What an approach is asked for, with every default resolved. SI, rad. */
export interface ApproachTask {
  readonly side: Side;
  /** m above the spot at the start. */
  readonly height: number;
  /** True where the height was asked for, and is not a default. */
  readonly heightGiven: boolean;
  /** m above the spot, and to the side of the centreline: those of the pattern's downwind leg. */
  readonly keyHeight: number;
  readonly spacing: number;
  /** rad, of the turns. */
  readonly bank: number;
  readonly bankGiven: boolean;
  /** What can be asked of one approach only. */
  readonly options: ApproachOptions;
  /** Load factor of the round-out. */
  readonly pull: number;
  /** m: the least height at which a turn to final, or a turn that puts final right, is complete. */
  readonly leastFinal: number;
  /** m along: where a search aims its touchdown so that the flight ends at the spot. Left out, the spot itself. */
  readonly touchdown?: number | undefined;
}

/** What a method found: the approach that touches down at the spot, or the one that comes nearest to it. */
export interface Solution {
  readonly closed: ClosedApproach;
  readonly solved: Solved;
  readonly made: boolean;
  /** Whole circles flown, and how many the height allows with no more than a medium bank. */
  readonly circles?: { readonly flown: number; readonly allowed: () => number } | undefined;
}

/** An approach: what it is, and how the number that it leaves open is found. One row of `approaches.ts`. */
export interface ApproachMethod {
  readonly id: Approach;
  /** The key position where it starts: the height there is the start height. */
  readonly startsAt: KeyId;
  /** m: the usual start height; `pattern` for that of the pattern. */
  readonly usualStart: number | 'pattern';
  /** What is found: one of these. */
  readonly finds: readonly SolvedName[];
  /** The approach that it ends in, from the downwind key on, if it does. */
  readonly endsIn?: Approach | undefined;
  /** Whether the distance of its downwind leg may be asked for; otherwise that follows from something else. */
  readonly hasOwnSpacing: boolean;
  /** Whether it is one circle held on the ground, from over the spot to final. */
  readonly isOneCircle?: boolean | undefined;
  /** What may be asked of it alone, and the rules for it. */
  readonly options: Readonly<Record<string, Rule>>;
  /** Those of its options that fix the start: with a height given as well, one of the two is too many. */
  readonly insteadOfHeight?: readonly HeightOption[] | undefined;
  /** Undefined where nothing of it can be flown in this wind. */
  readonly solve: (asked: ApproachTask, conditions: Conditions) => Solution | undefined;
}

/** m. Where nothing is asked for, the turn to final is planned to be complete this much higher than it must be. */
const inHand = 100 * metresPerFoot;

/**
 * m: the height at which the turn to final is planned to be complete, to allow for a turn that comes out wide or for
 * air that sinks.
 */
export function plannedFinal({ leastFinal }: Pick<ApproachTask, 'leastFinal'>): number {
  return leastFinal + inHand;
}

/**
 * m. A search brings its touchdown this near to the spot: a quarter of how far off the flight may end before it is
 * aimed again.
 */
export const spotTolerance = 5e-3;
