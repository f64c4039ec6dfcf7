import { metresPerFoot } from '../../units/factors.ts';
import type { Approached } from '../flying/approaching.ts';
import type { Conditions } from '../flying/conditions.ts';
import type { Side } from '../flying/procedure.ts';
import type { Approach, Solved } from '../terms/plan.ts';

/** What an approach is asked for, every default resolved. SI, rad. */
export interface Asked {
  readonly side: Side;
  /** m above the spot at the start. */
  readonly height: number;
  /** True where the height was asked for, and not a default. */
  readonly heightGiven: boolean;
  /** m above the spot and to the side of the centreline: the pattern's downwind leg. */
  readonly keyHeight: number;
  readonly spacing: number;
  /** rad, of the turns. */
  readonly bank: number;
  readonly bankGiven: boolean;
  /** m from the spot to the base leg, where it is asked for. */
  readonly baseDistance?: number | undefined;
  /** Whole circles of the spiral, where they are asked for. */
  readonly circles?: number | undefined;
  /** True where the circles of the spiral drift with the wind, and are not held on the ground. */
  readonly drifting: boolean;
  /** Load factor of the round-out. */
  readonly pull: number;
  /** m: the least height at which a turn to final, or a turn that puts final right, is complete. */
  readonly leastFinal: number;
  /** m along: where a search brings its touchdown, that the flight ends at the spot. Left out, the spot itself. */
  readonly touchdown?: number | undefined;
}

/** What a method found: the approach that touches down at the spot, or the one that comes nearest. */
export interface Answer {
  readonly approached: Approached;
  readonly solved: Solved;
  readonly made: boolean;
  /** Whole circles flown, of a spiral. */
  readonly circles?: number | undefined;
}

/** One row of the table of approaches: how the open number of a procedure is found. */
export interface ApproachMethod {
  readonly id: Approach;
  /** Undefined where nothing of it can be flown in this wind. */
  readonly answer: (asked: Asked, conditions: Conditions) => Answer | undefined;
}

/** m. Where nothing is asked for, the turn to final is planned to be complete so much higher than it must be. */
const inHand = 100 * metresPerFoot;

/** m: the height at which the turn to final is planned to be complete, for a turn that came out wide or an air that sank. */
export function plannedFinal({ leastFinal }: Pick<Asked, 'leastFinal'>): number {
  return leastFinal + inHand;
}

/** m. A search brings its touchdown this near to the spot: a quarter of what the flight may be off before it is aimed again. */
export const spotTolerance = 5e-3;
